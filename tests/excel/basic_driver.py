"""Runs a VBA module in LibreOffice's own Basic, which knows the language: modules and calls in, answers out.

Runs on the Python that has LibreOffice's bridge, so it imports nothing of this repository. Standard input is
one JSON object: the command that starts LibreOffice, the pipe, the modules by name, the functions to call.
"""

from __future__ import annotations

import contextlib
import json
import os
import signal
import subprocess
import sys
import threading
import time
from typing import Any

START_SECONDS = 60
ALL_SECONDS = 80
ALWAYS_EXECUTE = 4  # com.sun.star.document.MacroExecMode


def connected(process: subprocess.Popen[bytes], url: str) -> Any:
    import uno

    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    last = time.monotonic() + START_SECONDS
    while True:
        try:
            return resolver.resolve(url)
        except Exception:
            if process.poll() is not None or time.monotonic() > last:
                raise
            time.sleep(0.05)


def answers(context: Any, modules: dict[str, str], calls: list[str]) -> list[Any]:
    import uno

    desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
    options = []
    for name, value in (("Hidden", True), ("MacroExecutionMode", ALWAYS_EXECUTE)):
        option = uno.createUnoStruct("com.sun.star.beans.PropertyValue")
        option.Name, option.Value = name, value
        options.append(option)
    document = desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, tuple(options))
    libraries = document.BasicLibraries
    libraries.VBACompatibilityMode = True
    if not libraries.hasByName("Standard"):
        libraries.createLibrary("Standard")
    library = libraries.getByName("Standard")
    for name, text in modules.items():
        library.insertByName(name, text)
    provider = document.getScriptProvider()
    found = []
    for name in calls:
        script = provider.getScript(f"vnd.sun.star.script:Standard.{name}?language=Basic&location=document")
        found.append(script.invoke((), (), ())[0])
    document.close(True)
    desktop.terminate()
    return found


def main() -> None:
    request = json.load(sys.stdin)
    accept = f"--accept=pipe,name={request['pipe']};urp;StarOffice.ComponentContext"
    process = subprocess.Popen(
        [*request["command"], accept],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,  # so that it can be ended with all that it started
    )

    def end() -> None:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)

    too_late = threading.Timer(ALL_SECONDS, end)
    too_late.start()
    try:
        url = f"uno:pipe,name={request['pipe']};urp;StarOffice.ComponentContext"
        print(json.dumps(answers(connected(process, url), request["modules"], request["calls"])))
        process.wait(START_SECONDS)
    finally:
        too_late.cancel()
        end()
        process.wait()


if __name__ == "__main__":
    main()
