"""The extension file: what is in it, that it needs nothing else, that it is written whole or not at all."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import types
import zipfile
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from costing.formulas.registry import FORMULAS, cell_functions
from costing.front_ends.libreoffice.build import build_extension, extension_bytes, extension_parts
from costing.front_ends.libreoffice.interface import IMPLEMENTATION, parameter_name
from costing.front_ends.libreoffice.parts import OLDEST_PYTHON
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from tests.book.blocks import demo_blocks
from tests.run_checks import run
from tests.test_frame import unions_made_at_run_time

NAME = "{http://openoffice.org/2001/registry}name"
LOOKS_LIKE_A_CELL = re.compile(r"[A-Z]{1,3}[0-9]+")


@pytest.fixture(scope="module")
def parts() -> dict[str, bytes]:
    return extension_parts()


@pytest.fixture(scope="module")
def unpacked(parts: dict[str, bytes], tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("extension")
    for name, content in parts.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return folder


def test_the_same_bytes_every_time() -> None:
    assert extension_bytes() == extension_bytes()


def test_the_file_is_written_whole(tmp_path: Path, parts: dict[str, bytes]) -> None:
    path = tmp_path / "formulas.oxt"
    build_extension(path)
    with zipfile.ZipFile(path) as packed:
        assert packed.testzip() is None
        assert {name: packed.read(name) for name in packed.namelist()} == parts
    assert [entry.name for entry in tmp_path.iterdir()] == ["formulas.oxt"]


@pytest.mark.parametrize("name", ["formulas.zip", "missing/formulas.oxt", "there.oxt", "folder.oxt"])
def test_or_not_at_all(tmp_path: Path, name: str) -> None:
    (tmp_path / "there.oxt").write_bytes(b"kept")
    (tmp_path / "folder.oxt").mkdir()
    with pytest.raises(InputError, match=re.escape(name)):
        build_extension(tmp_path / name)
    assert {entry.name for entry in tmp_path.iterdir()} == {"there.oxt", "folder.oxt"}
    assert (tmp_path / "there.oxt").read_bytes() == b"kept"


def test_a_file_is_replaced_when_asked(tmp_path: Path) -> None:
    path = tmp_path / "there.oxt"
    path.write_bytes(b"old")
    build_extension(path, overwrite=True)
    assert path.read_bytes() == extension_bytes()


def test_no_rubbish_is_packed(parts: dict[str, bytes]) -> None:
    assert all(
        name.endswith((".py", ".csv", ".toml", ".xml", ".xcu", ".idl", ".components", ".txt"))
        for name in parts
    )
    assert not [name for name in parts if "__pycache__" in name or "source_list" in name]


def test_every_module_that_is_imported_is_packed(unpacked: Path) -> None:
    modules = {
        ".".join(path.relative_to(unpacked / "pythonpath").with_suffix("").parts).removesuffix(".__init__")
        for path in unpacked.glob("pythonpath/**/*.py")
    }
    assert {"costing", "costing.formulas.cell_calls", "costing.cost.money"} <= modules
    done = isolated(unpacked, f"import importlib; [importlib.import_module(n) for n in {sorted(modules)!r}]")
    assert done.returncode == 0, done.stderr


# Runs without site packages, and refuses all that is neither the standard library nor in the extension.
ISOLATED = """
import json, sys
class Blocker:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] not in STANDARD | {"costing"}:
            raise ImportError(name + " is blocked")
STANDARD = set(sys.stdlib_module_names)
sys.meta_path.insert(0, Blocker())
sys.path.insert(0, PACKAGE)
"""


def isolated(unpacked: Path, program: str) -> subprocess.CompletedProcess[str]:
    package = f"PACKAGE = {str(unpacked / 'pythonpath')!r}\n"
    return subprocess.run(
        [sys.executable, "-I", "-S", "-B", "-c", package + ISOLATED + program],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )


def test_every_example_works_in_a_python_without_libraries(unpacked: Path) -> None:
    done = isolated(
        unpacked,
        "from costing.formulas.registry import OF_BOOK, cell_functions\n"
        "from costing.front_ends.libreoffice.adapter import method\n"
        "needs = {'WARP_REASON_FOR', *OF_BOOK}\n"
        "found = {n: method(n)(*f.example) for n, f in cell_functions().items() if n not in needs}\n"
        "print(json.dumps([found, sorted(sys.modules), sys.modules['costing'].__file__]))",
    )
    assert done.returncode == 0, done.stderr
    found, loaded, place = json.loads(done.stdout)
    assert place.startswith(str(unpacked))
    assert {name.partition(".")[0] for name in loaded} <= {*sys.stdlib_module_names, "costing", "__main__"}
    for name, formula in FORMULAS.items():
        assert found[name] == formula.calculate(formula.example), name


def test_a_book_handed_over_as_blocks_is_read_in_a_python_without_libraries(
    unpacked: Path, tmp_path: Path
) -> None:
    handed = tmp_path / "blocks.json"
    handed.write_text(json.dumps(demo_blocks()), encoding="utf-8")
    done = isolated(
        unpacked,
        "from costing.book.sheet import Sheet\n"
        "from costing.book.whole import mill_from_sheets\n"
        f"blocks = json.load(open({str(handed)!r}, encoding='utf-8'))\n"
        "mill = mill_from_sheets({title: Sheet.from_rows(title, rows) for title, rows in blocks.items()})\n"
        "print(json.dumps([[*key, place] for key, place in mill.places.items()]))",
    )
    assert done.returncode == 0, done.stderr
    found = {(kind, code): place for kind, code, place in json.loads(done.stdout)}
    assert found == read_book(demo_book()).places


@pytest.mark.parametrize("library", ["pint", "numpy", "openpyxl"])
def test_the_blocker_blocks(unpacked: Path, library: str) -> None:
    done = isolated(unpacked, f"import {library}")
    assert f"{library} is blocked" in done.stderr


def test_all_of_it_runs_on_the_oldest_python(unpacked: Path) -> None:
    target = ".".join(str(number) for number in OLDEST_PYTHON)
    assert run("vermin", f"--target={target}-", "--violations", "--no-tips", str(unpacked))
    for path in unpacked.rglob("*.py"):
        assert unions_made_at_run_time(path.read_text(encoding="utf-8")) == [], path


def test_a_newer_python_would_be_seen(tmp_path: Path) -> None:
    (tmp_path / "newer.py").write_text("import tomllib\n", encoding="utf-8")
    assert not run("vermin", "--target=3.9-", "--violations", "--no-tips", str(tmp_path))


def children(parent: ElementTree.Element) -> dict[str, ElementTree.Element]:
    """The nodes below one, by name, each name once."""
    nodes = parent.findall("node")
    named = {node.attrib[NAME]: node for node in nodes}
    assert len(named) == len(nodes)
    return named


def shown(node: ElementTree.Element, name: str) -> str:
    (found,) = [entry for entry in node.findall("prop") if entry.attrib[NAME] == name]
    return found.findtext("value", "")


def test_the_wizard_text_agrees_with_the_registry(parts: dict[str, bytes]) -> None:
    top = children(ElementTree.fromstring(parts["CalcAddIns.xcu"]))["AddInInfo"]
    functions = children(children(children(top)[IMPLEMENTATION])["AddInFunctions"])
    assert list(functions) == list(cell_functions())
    for name, node in functions.items():
        assert shown(node, "DisplayName") == shown(node, "CompatibilityName") == name
        assert len(shown(node, "Description")) > len(name)
        arguments = children(children(node)["Parameters"])
        parameters = cell_functions()[name].parameters
        assert list(arguments) == [parameter_name(parameter) for parameter in parameters]
        displayed = [shown(argument, "DisplayName") for argument in arguments.values()]
        assert len(set(displayed)) == len(displayed)
        for argument, parameter in zip(arguments.values(), parameters, strict=True):
            assert shown(argument, "Description") == parameter.help != ""


def test_names_are_plain_and_no_cell_reference() -> None:
    for name, function in cell_functions().items():
        assert re.fullmatch(r"WARP(_[A-Z]+)+", name), name
        assert not LOOKS_LIKE_A_CELL.fullmatch(name)
        for parameter in function.parameters:
            assert re.fullmatch(r"[a-z]+([A-Z][a-z0-9]*)*", parameter_name(parameter)), parameter


def test_what_may_be_left_out_comes_last(parts: dict[str, bytes]) -> None:
    for name, function in cell_functions().items():
        optional = [parameter.optional for parameter in function.parameters]
        assert optional == sorted(optional), name


def test_the_interface_has_a_method_for_every_function(parts: dict[str, bytes]) -> None:
    methods = re.findall(r"^ {4}(\S.*) (WARP_\w+)\(", parts["functions.idl"].decode(), re.MULTILINE)
    assert [name for _, name in methods] == list(cell_functions())
    arrays = {name for kind, name in methods if kind.startswith("sequence")}
    assert arrays == {name for name, function in cell_functions().items() if function.result == "array"}


class Service:
    """Stands in for what LibreOffice gives a component."""

    def __init__(self) -> None:
        self.added: list[tuple[type, str, tuple[str, ...]]] = []

    def addImplementation(self, made: type, name: str, services: tuple[str, ...]) -> None:  # noqa: N802
        self.added.append((made, name, services))


@pytest.fixture
def loaded(unpacked: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, Any]:
    """What LibreOffice gets when it loads the extension, with stand-ins for its own modules."""
    base = type("Base", (), {})
    stand_ins: dict[str, dict[str, Any]] = {
        "uno": {"getClass": lambda name: type(name.rpartition(".")[2], (), {})},
        "unohelper": {"Base": base, "ImplementationHelper": Service},
        "com.sun.star.table": {"CellAddress": object},
        "com.sun.star.task": {"XJob": type("XJob", (), {})},
    }
    for name, content in stand_ins.items():
        monkeypatch.setitem(sys.modules, name, types.SimpleNamespace(**content))
    monkeypatch.setattr(sys, "path", list(sys.path))
    path = unpacked / "addin.py"
    space: dict[str, Any] = {"__file__": str(path), "__name__": "addin"}
    before = set(sys.modules)
    exec(compile(path.read_text(encoding="utf-8"), str(path), "exec"), space)
    assert not {name for name in set(sys.modules) - before if name.startswith("costing")}
    assert sys.path[0] == str(unpacked / "pythonpath")
    return space


def test_what_libreoffice_loads_is_what_is_registered(
    parts: dict[str, bytes], loaded: dict[str, Any]
) -> None:
    added = loaded["g_ImplementationHelper"].added
    registered = re.findall(
        r'<implementation name="(.*?)"><service name="(.*?)"/>', parts["addin.components"].decode()
    )
    assert [(name, services) for _, name, services in added] == [
        (name, (service,)) for name, service in registered
    ]
    assert added[0][1] == IMPLEMENTATION
    functions = added[0][0](None)
    assert functions.WARP_CARRIED_BY_LIQUOR(0.75, 2.0, None) == 1.5
    assert "WARP_CARRIED_BY_LIQUOR" in vars(functions)  # found at once from now on
    with pytest.raises(AttributeError):
        functions.anything_else  # noqa: B018


def test_an_older_python_is_refused_by_the_call_and_not_before(
    loaded: dict[str, Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    functions = loaded["Functions"](None)
    monkeypatch.setattr(sys, "version_info", (3, 8, 18))
    with pytest.raises(RuntimeError, match=r"need Python 3\.9 or later"):
        functions.WARP_PROGRAM_VERSION()


def test_the_job_leaves_other_documents_alone(loaded: dict[str, Any]) -> None:
    class Document:
        def supportsService(self, name: str) -> bool:  # noqa: N802
            return False

    loaded["opened"](Document())  # would fail at anything else it asked for
    loaded["opened"](None)
    loaded["ResolveNames"](None).execute(())
