"""Laying a room of strip on paper: the pile, the rows, the rules of the joints, the search. Runs in Python alone."""
