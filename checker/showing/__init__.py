"""Reviews shown: one module for each output, none of which judges anything."""
