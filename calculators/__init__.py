"""Numbers in, numbers out. No YAML, no HTML, no files."""
