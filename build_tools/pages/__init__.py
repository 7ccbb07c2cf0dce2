"""From the checked book to the HTML of each page. Nothing here knows the engine that publishes it."""
