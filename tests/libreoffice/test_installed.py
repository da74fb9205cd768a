"""What is read from LibreOffice's files agrees with what its own tool says."""

from __future__ import annotations

import re

import costing
from costing.front_ends import office_extensions
from costing.front_ends.programs import libreoffice, program_folder
from tests.libreoffice.office import Office


def test_the_extension_is_found_as_the_tool_tells_it(installed: Office) -> None:
    office = libreoffice()
    assert office is not None
    program = program_folder(office)
    assert program is not None
    user = installed.folder / "profile" / "user"
    (found,) = office_extensions.installed(program, user)
    assert (found.where, found.version, found.is_on) == (
        office_extensions.FOR_THIS_USER,
        costing.__version__,
        True,
    )
    assert found.is_of_this_build()

    # On a copy, for the tool writes into the profile, and this one is in use.
    copy = installed.folder / "copy"
    installed.run(["cp", "-r", str(user.parent), str(copy)])
    environment = f"-env:UserInstallation={copy.as_uri()}"
    told = installed.run(["unopkg", "list", environment]).stdout
    assert f"Version: {costing.__version__}" in told
    assert "is registered: yes" in told
    place = re.search(r"URL: .*/uno_packages/(\S+\.oxt)", told)
    assert place is not None
    assert found.folder == user / "uno_packages" / "cache" / "uno_packages" / place[1]

    done = installed.run(["unopkg", "remove", environment, "org.warpcosting.formulas"])
    assert done.returncode == 0, done.stderr
    assert (copy / "user" / found.folder.relative_to(user)).is_dir()  # left behind until the next start
    assert office_extensions.installed(program, copy / "user") == []
