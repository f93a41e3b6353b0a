"""The report: one HTML file of reviews that opens anywhere and prints as a set of sheets."""
