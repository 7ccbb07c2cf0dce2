"""The pages about the whole fit-out: its order as a drawn graph, its hold points, its dangers."""
