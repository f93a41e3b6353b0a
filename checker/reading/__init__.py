"""Spec files read: values in SI, each with its place and where it came from."""
