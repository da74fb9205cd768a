"""Water and steam by IAPWS-IF97: coefficients and equations of regions 1, 2 and 4, in reduced numbers.

Every number here is pure. A pressure ratio is a pressure over the reducing pressure of its region, a
temperature ratio the reducing temperature over the temperature; :mod:`costing.process.steam` holds those
reducing constants and their units.

References
----------
iapws-if97, tables 2, 10, 11 and 34. The numbers were compared one by one with a reference library.
"""

from __future__ import annotations

from typing import Any

# Table 2: I, J, n of the water equation, equation (7).
WATER = (
    (0, -2, 0.14632971213167),
    (0, -1, -0.84548187169114),
    (0, 0, -0.37563603672040e1),
    (0, 1, 0.33855169168385e1),
    (0, 2, -0.95791963387872),
    (0, 3, 0.15772038513228),
    (0, 4, -0.16616417199501e-1),
    (0, 5, 0.81214629983568e-3),
    (1, -9, 0.28319080123804e-3),
    (1, -7, -0.60706301565874e-3),
    (1, -1, -0.18990068218419e-1),
    (1, 0, -0.32529748770505e-1),
    (1, 1, -0.21841717175414e-1),
    (1, 3, -0.52838357969930e-4),
    (2, -3, -0.47184321073267e-3),
    (2, 0, -0.30001780793026e-3),
    (2, 1, 0.47661393906987e-4),
    (2, 3, -0.44141845330846e-5),
    (2, 17, -0.72694996297594e-15),
    (3, -4, -0.31679644845054e-4),
    (3, 0, -0.28270797985312e-5),
    (3, 6, -0.85205128120103e-9),
    (4, -5, -0.22425281908000e-5),
    (4, -2, -0.65171222895601e-6),
    (4, 10, -0.14341729937924e-12),
    (5, -8, -0.40516996860117e-6),
    (8, -11, -0.12734301741641e-8),
    (8, -6, -0.17424871230634e-9),
    (21, -29, -0.68762131295531e-18),
    (23, -31, 0.14478307828521e-19),
    (29, -38, 0.26335781662795e-22),
    (30, -39, -0.11947622640071e-22),
    (31, -40, 0.18228094581404e-23),
    (32, -41, -0.93537087292458e-25),
)

# Table 10: J, n of the ideal-gas part of the steam equation, equation (16).
STEAM_IDEAL = (
    (0, -0.96927686500217e1),
    (1, 0.10086655968018e2),
    (-5, -0.56087911283020e-2),
    (-4, 0.71452738081455e-1),
    (-3, -0.40710498223928),
    (-2, 0.14240819171444e1),
    (-1, -0.43839511319450e1),
    (2, -0.28408632460772),
    (3, 0.21268463753307e-1),
)

# Table 11: I, J, n of the residual part of the steam equation, equation (17).
STEAM_RESIDUAL = (
    (1, 0, -0.17731742473213e-2),
    (1, 1, -0.17834862292358e-1),
    (1, 2, -0.45996013696365e-1),
    (1, 3, -0.57581259083432e-1),
    (1, 6, -0.50325278727930e-1),
    (2, 1, -0.33032641670203e-4),
    (2, 2, -0.18948987516315e-3),
    (2, 4, -0.39392777243355e-2),
    (2, 7, -0.43797295650573e-1),
    (2, 36, -0.26674547914087e-4),
    (3, 0, 0.20481737692309e-7),
    (3, 1, 0.43870667284435e-6),
    (3, 3, -0.32277677238570e-4),
    (3, 6, -0.15033924542148e-2),
    (3, 35, -0.40668253562649e-1),
    (4, 1, -0.78847309559367e-9),
    (4, 2, 0.12790717852285e-7),
    (4, 3, 0.48225372718507e-6),
    (5, 7, 0.22922076337661e-5),
    (6, 3, -0.16714766451061e-10),
    (6, 16, -0.21171472321355e-2),
    (6, 35, -0.23895741934104e2),
    (7, 0, -0.59059564324270e-17),
    (7, 11, -0.12621808899101e-5),
    (7, 25, -0.38946842435739e-1),
    (8, 8, 0.11256211360459e-10),
    (8, 36, -0.82311340897998e1),
    (9, 13, 0.19809712802088e-7),
    (10, 4, 0.10406965210174e-18),
    (10, 10, -0.10234747095929e-12),
    (10, 14, -0.10018179379511e-8),
    (16, 29, -0.80882908646985e-10),
    (16, 50, 0.10693031879409),
    (18, 57, -0.33662250574171),
    (20, 20, 0.89185845355421e-24),
    (20, 35, 0.30629316876232e-12),
    (20, 48, -0.42002467698208e-5),
    (21, 21, -0.59056029685639e-25),
    (22, 53, 0.37826947613457e-5),
    (23, 39, -0.12768608934681e-14),
    (24, 26, 0.73087610595061e-28),
    (24, 40, 0.55414715350778e-16),
    (24, 58, -0.94369707241210e-6),
)

# Table 34: n1 to n10 of the saturation line, equations (29) to (31).
SATURATION = (
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
)

# What remains of a term when it is differentiated by the temperature ratio; a term without it goes.
WATER_SLOPES = tuple((i, j - 1, n * j) for i, j, n in WATER if j)
STEAM_IDEAL_SLOPES = tuple((j - 1, n * j) for j, n in STEAM_IDEAL if j)
STEAM_RESIDUAL_SLOPES = tuple((i, j - 1, n * j) for i, j, n in STEAM_RESIDUAL if j)


def water_slope(pressure_ratio: Any, temperature_ratio: Any) -> Any:
    """Slope of the reduced free enthalpy of water along the temperature ratio, region 1.

    Parameters
    ----------
    pressure_ratio : float
        Pressure over 16.53 MPa [fraction].
    temperature_ratio : float
        1386 K over the temperature [fraction].

    Returns
    -------
    float
        The slope; times the gas constant and 1386 K it is the enthalpy [fraction].

    Notes
    -----
    ``gamma_tau = sum n J (7.1 - pi)^I (tau - 1.222)^(J - 1)``, from equation (7).

    Examples
    --------
    Table 5, 3 MPa and 300 K, with the gas constant 0.461526 kJ/kg/K:

    >>> round(0.461526 * 1386 * water_slope(3 / 16.53, 1386 / 300), 6)
    115.331273

    References
    ----------
    iapws-if97, equation (7) and table 2; if97-verification-values, table 5
    """
    a = 7.1 - pressure_ratio
    b = temperature_ratio - 1.222
    return sum(n * a**i * b**j for i, j, n in WATER_SLOPES)


def steam_slope(pressure_ratio: Any, temperature_ratio: Any) -> Any:
    """Slope of the reduced free enthalpy of steam along the temperature ratio, region 2.

    Parameters
    ----------
    pressure_ratio : float
        Pressure over 1 MPa [fraction].
    temperature_ratio : float
        540 K over the temperature [fraction].

    Returns
    -------
    float
        The slope; times the gas constant and 540 K it is the enthalpy [fraction].

    Notes
    -----
    ``gamma_tau = sum n J tau^(J - 1) + sum n J pi^I (tau - 0.5)^(J - 1)``, from equations (16) and (17).

    Examples
    --------
    Table 15, 30 MPa and 700 K:

    >>> round(0.461526 * 540 * steam_slope(30.0, 540 / 700), 5)
    2631.49474

    References
    ----------
    iapws-if97, equations (15) to (17), tables 10 and 11; if97-verification-values, table 15
    """
    b = temperature_ratio - 0.5
    ideal = sum(n * temperature_ratio**j for j, n in STEAM_IDEAL_SLOPES)
    return ideal + sum(n * pressure_ratio**i * b**j for i, j, n in STEAM_RESIDUAL_SLOPES)


def saturation_pressure_ratio(temperature: Any) -> Any:
    """Pressure at which water boils, over 1 MPa, region 4.

    Parameters
    ----------
    temperature : float
        Temperature over 1 K [fraction].

    Returns
    -------
    float
        Pressure over 1 MPa [fraction].

    Notes
    -----
    Equation (30): the quadratic (29) in the fourth root of the pressure, solved for the pressure.

    Examples
    --------
    Table 35, 500 K:

    >>> round(saturation_pressure_ratio(500.0), 8)
    2.63889776

    References
    ----------
    iapws-if97, equation (30) and table 34; if97-verification-values, table 35
    """
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = SATURATION
    theta = temperature + n9 / (temperature - n10)
    a = (theta + n1) * theta + n2
    b = (n3 * theta + n4) * theta + n5
    c = (n6 * theta + n7) * theta + n8
    return (2.0 * c / ((b * b - 4.0 * a * c) ** 0.5 - b)) ** 4


def saturation_temperature_ratio(pressure_ratio: Any) -> Any:
    """Temperature at which water boils, over 1 K, region 4.

    Parameters
    ----------
    pressure_ratio : float
        Pressure over 1 MPa [fraction].

    Returns
    -------
    float
        Temperature over 1 K [fraction].

    Notes
    -----
    Equation (31): the quadratic (29), solved for the temperature.

    Examples
    --------
    Table 36, 0.1 MPa:

    >>> round(saturation_temperature_ratio(0.1), 6)
    372.755919

    References
    ----------
    iapws-if97, equation (31) and table 34; if97-verification-values, table 36
    """
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = SATURATION
    beta = pressure_ratio**0.25
    e = (beta + n3) * beta + n6
    f = (n1 * beta + n4) * beta + n7
    g = (n2 * beta + n5) * beta + n8
    d = 2.0 * g / (-f - (f * f - 4.0 * e * g) ** 0.5)
    total = n10 + d
    return (total - (total * total - 4.0 * (n9 + n10 * d)) ** 0.5) / 2.0
