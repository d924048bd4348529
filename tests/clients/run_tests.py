"""Runs the Python tests of a folder and ends with how many there were and how many passed, as node's own runner does.

    python3 tests/clients/run_tests.py tests/clients/python
"""

import sys
import unittest


def main() -> int:
    folder = sys.argv[1]
    result = unittest.TextTestRunner(stream=sys.stdout, verbosity=2).run(unittest.defaultTestLoader.discover(folder))
    # A test of several cases may fail more than once, and what sets tests up is none of them.
    lost = {str(test).split(" [")[0].split(" (<")[0] for test, _ in result.failures + result.errors + result.skipped}
    total = max(result.testsRun, len(lost))
    print(f"# tests {total}\n# pass {total - len(lost)}")
    return 0 if total > 0 and not lost else 1


if __name__ == "__main__":
    sys.exit(main())
