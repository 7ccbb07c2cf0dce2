"""What runs on the page: the calculators compiled to script, and the scripts beside them."""
