"""Where the program starts, as `belowgrade` or as `python -m checker`; it can be interrupted early.

Loading the rest takes longer than many a command, so this module loads next to nothing.
"""

from __future__ import annotations

import contextlib
import gc
import os
import signal
import sys


def main() -> None:
    """Run the command line. An interruption ends it with one line and status 130, however early."""
    # Whoever starts it in the background may have said that it is not to be interrupted.
    interruptible = signal.getsignal(signal.SIGINT) is signal.default_int_handler
    if interruptible:
        # Nothing is begun while the rest is loaded, and an exception could get lost in there.
        signal.signal(signal.SIGINT, _end_at_once)
    # All that is loaded stays; to look among it for garbage finds none.
    gc.disable()
    from checker.command import main as run

    gc.enable()
    try:
        if interruptible:
            signal.signal(signal.SIGINT, signal.default_int_handler)
        run()
    except (Exception, KeyboardInterrupt) as error:
        if not _comes_of_an_interruption(error):
            raise
        _say()
        sys.exit(130)
    finally:
        if interruptible:
            # All is said and done; Python's own tidying up is no work to interrupt.
            signal.signal(signal.SIGINT, signal.SIG_IGN)


def _end_at_once(*_: object) -> None:
    _say()
    os._exit(130)


def _say() -> None:
    # Where not even this can be said, the exit status must do.
    with contextlib.suppress(OSError):
        os.write(2, b"interrupted\n")


def _comes_of_an_interruption(error: BaseException | None) -> bool:
    """Say so also where Python has made another error of it, as while a class is made."""
    while error is not None and not isinstance(error, KeyboardInterrupt):
        error = error.__cause__ or error.__context__
    return error is not None


if __name__ == "__main__":
    main()
