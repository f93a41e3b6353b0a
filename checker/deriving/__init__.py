"""From the values of a spec to the quantities that rules judge."""
