"""Rules asked of a spec; what comes of it is a review."""
