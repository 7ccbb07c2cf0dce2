"""Records of work done, as they come from the site: read, put together, and added up."""
