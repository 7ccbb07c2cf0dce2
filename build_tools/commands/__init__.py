"""The commands, one module each. At its top a module imports the standard library alone: packages come later."""
