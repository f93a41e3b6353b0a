"""Formulas: pure functions of SI numbers, each with its source and its limits."""
