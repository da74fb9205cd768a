"""In continuous integration a skipped test is a failed one."""

from __future__ import annotations

import os
from collections.abc import Generator
from typing import Any, TypeVar

import hypothesis
import pytest

# How long one example takes says nothing on a machine that others use too.
hypothesis.settings.register_profile(
    "house", deadline=None, suppress_health_check=[hypothesis.HealthCheck.too_slow]
)
hypothesis.settings.load_profile("house")

Report = TypeVar("Report", pytest.TestReport, pytest.CollectReport)


class SkipsFail:
    """Plugin that turns every skip, of a test or of a whole file, into a failure."""

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_makereport(self) -> Generator[None, pytest.TestReport, pytest.TestReport]:
        return failed_if_skipped((yield))

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self) -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
        return failed_if_skipped((yield))


def failed_if_skipped(report: Report) -> Report:
    expected_failure = hasattr(report, "wasxfail")  # pytest reports those as skipped too
    if report.skipped and not expected_failure:
        reason: Any = report.longrepr
        report.outcome = "failed"
        report.longrepr = f"skipped, and nothing may be skipped here: {reason[-1]}"
    return report


def pytest_configure(config: pytest.Config) -> None:
    if os.environ.get("CI") == "true":
        config.pluginmanager.register(SkipsFail())  # a plugin, so that it also sees the doctests of costing/
