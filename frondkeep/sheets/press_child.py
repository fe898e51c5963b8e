"""The press itself: run as a program of its own, under limits, so that no sheet can hurt the server.

Reads one JSON order from standard input and writes the PDF to standard output. Ends with 3 and the
compiler's words on standard error when the sheet cannot be set.
"""

import json
import resource
import sys

CPU_SECONDS = 20
MEMORY_BYTES = 1024**3  # address space
REFUSED = 3


def limit_myself() -> None:
    """Take away what a sheet never needs: more time, more memory, files on disk, other programs."""
    resource.setrlimit(resource.RLIMIT_CPU, (CPU_SECONDS, CPU_SECONDS))
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY_BYTES, MEMORY_BYTES))
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def main() -> int:
    """Set one sheet."""
    limit_myself()
    import typst  # after the limits: its own loading counts too

    order = json.load(sys.stdin.buffer)
    try:
        pdf = typst.compile(
            order["template"],
            root=order["root"],
            ignore_system_fonts=True,  # the same bytes on every machine
            sys_inputs={"data": json.dumps(order["data"])},
            format="pdf",
            pdf_standards=["ua-1"],
            timestamp=order["timestamp"],
        )
    except typst.TypstError as refusal:
        sys.stderr.write(refusal.diagnostic or str(refusal))
        return REFUSED
    sys.stdout.buffer.write(pdf)
    return 0


if __name__ == "__main__":
    sys.exit(main())
