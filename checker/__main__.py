"""Lets `python -m checker` do what `belowgrade` does."""

from checker.command import main

if __name__ == "__main__":
    main()
