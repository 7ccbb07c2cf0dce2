"""Setting fixtures and laying drains."""
