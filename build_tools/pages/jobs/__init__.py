"""The pages and files of jobs: an overview, and one module for each page that hangs on it."""
