"""The book: its model, reading it with line numbers, its cross-references and its checks."""
