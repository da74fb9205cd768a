"""Yarn counts, length and mass of yarn.

Inside, a yarn is its linear density in kg/m. English and metric counts are lengths per mass, so in
coherent units each conversion is a plain reciprocal; Ne, Nm, tex and denier live at the edge, in the
unit table (1 lb = 0.45359237 kg, 1 yd = 0.9144 m, a cotton hank = 840 yd; tex = 590.5412 / Ne).
A marketed count is nominal: its mass is the mass at commercial regain.
"""

from __future__ import annotations

from typing import Any


def linear_density_from_english_count(english_count: Any) -> Any:
    """Linear density of a yarn from its English cotton count.

    Leaves out moisture: both figures are taken at the same regain.

    Parameters
    ----------
    english_count : float
        Length per mass, usually typed in Ne [m/kg].

    Returns
    -------
    float
        Mass per length [kg/m].

    Notes
    -----
    ``T = 1 / Ne``; with Ne in hanks of 840 yd per lb and T in tex the same line reads ``590.5412 / Ne``.

    Examples
    --------
    >>> round(linear_density_from_english_count(7.0 * 1693.36182) * 1e6, 3)  # 7 Ne in tex
    84.363

    References
    ----------
    yard-pound-1959
    """
    return 1.0 / english_count


def english_count_from_linear_density(linear_density: Any) -> Any:
    """English cotton count of a yarn from its linear density.

    Leaves out moisture: both figures are taken at the same regain.

    Parameters
    ----------
    linear_density : float
        Mass per length [kg/m].

    Returns
    -------
    float
        Length per mass, usually shown in Ne [m/kg].

    Notes
    -----
    ``Ne = 1 / T``

    Examples
    --------
    >>> round(english_count_from_linear_density(84.363e-6) / 1693.36182, 3)  # 84.363 tex in Ne
    7.0

    References
    ----------
    yard-pound-1959
    """
    return 1.0 / linear_density


def linear_density_from_metric_count(metric_count: Any) -> Any:
    """Linear density of a yarn from its metric count.

    Leaves out moisture: both figures are taken at the same regain.

    Parameters
    ----------
    metric_count : float
        Length per mass, usually typed in Nm [m/kg].

    Returns
    -------
    float
        Mass per length [kg/m].

    Notes
    -----
    ``T = 1 / Nm``; with T in tex the same line reads ``1000 / Nm``.

    Examples
    --------
    >>> round(linear_density_from_metric_count(12000.0) * 1e6, 3)  # 12 Nm in tex
    83.333
    """
    return 1.0 / metric_count


def metric_count_from_linear_density(linear_density: Any) -> Any:
    """Metric count of a yarn from its linear density.

    Leaves out moisture: both figures are taken at the same regain.

    Parameters
    ----------
    linear_density : float
        Mass per length [kg/m].

    Returns
    -------
    float
        Length per mass, usually shown in Nm [m/kg].

    Notes
    -----
    ``Nm = 1 / T``

    Examples
    --------
    >>> round(metric_count_from_linear_density(84.363e-6) / 1000.0, 3)  # 84.363 tex in Nm
    11.854
    """
    return 1.0 / linear_density


def linear_density_from_denier(denier_count: Any) -> Any:
    """Linear density of a yarn from its denier.

    Parameters
    ----------
    denier_count : float
        Mass per length, usually typed in denier [kg/m].

    Returns
    -------
    float
        Mass per length [kg/m].

    Notes
    -----
    Both are mass per length, so only the unit changes: 9 denier are 1 tex.

    Examples
    --------
    >>> linear_density_from_denier(84e-6)  # 756 denier
    8.4e-05
    """
    return denier_count


def denier_from_linear_density(linear_density: Any) -> Any:
    """Denier of a yarn from its linear density.

    Parameters
    ----------
    linear_density : float
        Mass per length [kg/m].

    Returns
    -------
    float
        Mass per length, usually shown in denier [kg/m].

    Notes
    -----
    Both are mass per length, so only the unit changes: 1 tex is 9 denier.

    Examples
    --------
    >>> denier_from_linear_density(84e-6)
    8.4e-05
    """
    return linear_density


def plied_linear_density(single_linear_density: Any, ply: Any, twist_contraction: Any = 0.0) -> Any:
    """Linear density of a plied yarn; a single yarn stays as it is spun.

    Leaves out singles of unlike counts; add their linear densities first.

    Parameters
    ----------
    single_linear_density : float
        Mass per length of one single [kg/m].
    ply : float
        Singles in the yarn [whole number].
    twist_contraction : float, optional
        Length of single over length of plied yarn, less one; a yarn of ply 1 is not twisted again, so it
        takes none [fraction].

    Returns
    -------
    float
        Mass per length of the plied yarn [kg/m].

    Notes
    -----
    ``T_n = n T (1 + k)``, and ``T_1 = T``; k of 1 to 5 % is common practice, no source.

    Examples
    --------
    >>> round(plied_linear_density(29.5e-6, ply=2, twist_contraction=0.03) * 1e6, 2)
    60.77
    >>> round(plied_linear_density(84.4e-6, ply=1, twist_contraction=0.03) * 1e6, 2)
    84.4

    References
    ----------
    gate-tf-1992, question 3
    """
    plied = 1.0 * (ply > 1.0)  # 1 or 0, in an array too
    return single_linear_density * ply * (1.0 + twist_contraction * plied)


def core_spun_linear_density(single_linear_density: Any, core_linear_density: Any, draft: Any) -> Any:
    """Linear density of a core-spun yarn, as spun.

    Leaves out what the yarn shortens when it relaxes.

    Parameters
    ----------
    single_linear_density : float
        Mass per length of the staple sheath [kg/m].
    core_linear_density : float
        Mass per length of the core as bought, before it is drawn [kg/m].
    draft : float
        Times the core is drawn out while it is spun in [number].

    Returns
    -------
    float
        Mass per length of the yarn [kg/m].

    Notes
    -----
    ``T = T_sheath + T_core / draft``

    Examples
    --------
    >>> round(core_spun_linear_density(37e-6, core_linear_density=7.8e-6, draft=3.5) * 1e6, 3)
    39.229
    """
    return single_linear_density + core_linear_density / draft


def sized_linear_density(linear_density: Any, size_add_on: Any) -> Any:
    """Linear density of a sized yarn.

    Leaves out stretch in the sizing machine; both masses dry or at equal regain.

    Parameters
    ----------
    linear_density : float
        Mass per length of the unsized yarn [kg/m].
    size_add_on : float
        Size solids, of the unsized mass [fraction].

    Returns
    -------
    float
        Mass per length of the sized yarn [kg/m].

    Notes
    -----
    ``T_s = T (1 + a)``, the same as ``Ne_s = Ne / (1 + a)``.

    Examples
    --------
    >>> round(sized_linear_density(84.4e-6, size_add_on=0.09) * 1e6, 2)
    92.0

    References
    ----------
    sizing-problems, problem 1
    """
    return linear_density * (1.0 + size_add_on)


def yarn_length_from_mass(yarn_mass: Any, linear_density: Any) -> Any:
    """Length of yarn in a mass of yarn.

    Parameters
    ----------
    yarn_mass : float
        Mass of yarn, at the regain of the count [kg].
    linear_density : float
        Mass per length [kg/m].

    Returns
    -------
    float
        Length [m].

    Notes
    -----
    ``L = M / T``

    Examples
    --------
    >>> round(yarn_length_from_mass(yarn_mass=0.25, linear_density=100e-6))
    2500

    References
    ----------
    yarn-mass-page
    """
    return yarn_mass / linear_density


def yarn_mass_from_length(yarn_length: Any, linear_density: Any) -> Any:
    """Mass of a length of yarn.

    Parameters
    ----------
    yarn_length : float
        Length of all ends together [m].
    linear_density : float
        Mass per length [kg/m].

    Returns
    -------
    float
        Mass, at the regain of the count [kg].

    Notes
    -----
    ``M = L T``

    Examples
    --------
    >>> round(yarn_mass_from_length(yarn_length=27e6, linear_density=7e-6), 6)
    189.0

    References
    ----------
    yarn-mass-page
    """
    return yarn_length * linear_density


def bone_dry_mass(commercial_regain: Any = 0.085) -> Any:
    """Bone-dry fibre in the nominal mass of a yarn.

    Leaves out wax and other matter that scouring takes away.

    Parameters
    ----------
    commercial_regain : float, optional
        Moisture of the commercial mass, of the bone-dry mass; 8.5 % is what the source below prints
        for cotton, a contract names its own table [fraction].

    Returns
    -------
    float
        Bone-dry mass per nominal mass [kg/kg].

    Notes
    -----
    ``m_dry = 1 / (1 + R)``

    Examples
    --------
    >>> round(bone_dry_mass(), 4)
    0.9217

    References
    ----------
    invoice-weight-page, problem 2
    """
    return 1.0 / (1.0 + commercial_regain)
