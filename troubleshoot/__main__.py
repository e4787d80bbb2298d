"""`python -m troubleshoot`: the same program, where its command is not on the path."""

from troubleshoot.cli.main import main

if __name__ == "__main__":
    main()
