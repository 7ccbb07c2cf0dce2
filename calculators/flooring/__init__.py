"""Numbers for strip floors."""
