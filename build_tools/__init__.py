"""Everything between the YAML of the book and the site."""
