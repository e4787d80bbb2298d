"""What is typed reaches the formula: of each calculation every value makes a difference."""

import pytest

from troubleshoot.quantities.catalogue import CATALOGUE, answer

TYPED = {
    "capacitance-under-load": "current=4/5 voltage=370/400 frequency=60/50",
    "capacitance-deviation": "rated=40/45 measured=37/30 tolerance=6/10",
    "capacitor-stored-energy": "capacitance=40/50 rms-voltage=370/440",
    "capacitor-discharge-time": "capacitance=40/50 resistance=20000/15000 start-voltage=500/600 "
    "safe-voltage=50/30",
    "capacitors-in-series": "values=40,40/40,30",
    "capacitors-in-parallel": "values=40,5/40,7.5",
    "voltage-unbalance": "ab=208/205 bc=212/215 ca=209/201",
    "current-unbalance": "a=20/22 b=21/24 c=19/16",
    "service-voltage": "nominal=208/240 measured=201/190",
    "winding-check": "c-r=1/1.5 c-s=3/3.5 r-s=4/5",
    "resistance-at-temperature": "resistance=2/3 t1=70/60 t2=150/170",
    "insulation-resistance-at-40c": "resistance=50/80 temperature=70/90",
    "synchronous-speed": "frequency=60/50 poles=4/6",
    "slip": "sync=1800/1200 running=1150/1100",
    "fan-laws": "speed-1=900/950 speed-2=1000/1100 flow=2000/2100",
    "belt-drive": "motor-speed=1750/1450 motor-pulley=3/4 fan-pulley=6/7",
    "motor-power": "voltage=208/230 current=10/12 power-factor=0.8/0.9 phases=3/1",
    "circuit-ampacity": "largest=20/30 others=3,2/3,4",
    "saturation": "refrigerant=R-410A/R-22 pressure=118/130 altitude=0/5000",
    "superheat": "refrigerant=R-410A/R-22 suction-pressure=118/100 line-temperature=60/65 "
    "altitude=0/5000",
    "subcooling": "refrigerant=R-410A/R-454B liquid-pressure=340/360 line-temperature=90/85 "
    "altitude=0/5000",
    "condensing-over-ambient": "refrigerant=R-410A/R-454B liquid-pressure=340/360 "
    "outdoor-dry-bulb=85/80 altitude=0/5000",
    "target-superheat": "return-wet-bulb=64/66 outdoor-dry-bulb=85/80",
    "compression-ratio": "suction-pressure=118/110 discharge-pressure=340/360 altitude=0/5000",
    "expected": "refrigerant=R-410A/R-22 metering=txv/fixed-orifice outdoor-dry-bulb=95/85 "
    "return-dry-bulb=80/78 return-wet-bulb=67/65 rla=20/25 tons=5/7.5",
    "leak-rate": "added=2/3 full-charge=10/12 days=200/100",
    "moist-air": "dry-bulb=80/75 relative-humidity=50/60 altitude=0/5000",
    "air-side-capacity": "airflow=2000/1800 entering-dry-bulb=80/82 entering-wet-bulb=67/66 "
    "leaving-dry-bulb=60/59 leaving-wet-bulb=58/57 altitude=0/5000",
    "outdoor-air-fraction": "return-air=75/74 mixed-air=70/69 outdoor=50/45 sensor-uncertainty=1/2",
    "mixed-air-temperature": "return-air=75/74 outdoor=50/45 fraction=20/30",
    "air-velocity": "velocity-pressure=0.06/0.08 density=0.075/0.07",
    "airflow-from-heat-rise": "output=100000/80000 rise=50/45 altitude=0/5000",
    "airflow-from-electric-heat": "power=15/20 rise=40/45 altitude=0/5000",
    "target-temperature-split": "return-dry-bulb=75/78 return-wet-bulb=63/65",
    "gas-input-rate": "dial=2/1 time=72/60 heating-value=1030/1000",
    "manifold-input-ratio": "p1=3.5/3.2 p2=3/2.5",
    "orifice-flow": "diameter=0.0935/0.08 pressure=3.5/3 specific-gravity=0.6/0.65 "
    "discharge-coefficient=0.9/0.8 heating-value=1030/1000",
    "altitude-derate": "altitude=5000/7000",
    "temperature-rise": "supply-air=120/110 return-air=70/65",
    "co-air-free": "co=50/60 o2=8/6",
    "excess-air": "o2=8/6 gas=natural-gas/propane",
    "combustion-efficiency": "stack-temperature=400/350 air-temperature=70/60 o2=8/6",
    "reading-limits": "reading=40/50 percent=2/3 counts=3/5 resolution=0.1/0.01",
    "conformance": "low-limit=37.6/36 high-limit=42.4/40.5 reading=38/40 u=0.5/0.8",
    "repeatability": "values=40,41,40.5/40,42,40.5",
    "false-accept-risk": "in-tolerance-probability=95/90 sigma-ratio=4/3",
}
"""Of each calculation its values as somebody types them, each with another after the stroke."""

VALUES = [(name, each.partition("=")[0]) for name in TYPED for each in TYPED[name].split()]


def test_every_calculation_is_tried() -> None:
    assert set(TYPED) == set(CATALOGUE)


@pytest.mark.parametrize(("name", "changed"), VALUES)
def test_another_value_gives_another_result(name: str, changed: str) -> None:
    """Regression: the derating for altitude was given the pressure of the air for the altitude,
    and left every unit in the mountains over-fired."""
    pairs = [each.partition("=") for each in TYPED[name].split()]
    first = [(key, values.split("/")[0]) for key, _, values in pairs]
    other = [(key, values.split("/")[key == changed]) for key, _, values in pairs]
    assert [r.figure for r in answer(name, other).results] != [
        r.figure for r in answer(name, first).results
    ]


@pytest.mark.parametrize(("altitude", "factor"), [("2000", 1), ("5000", 0.8), ("8000", 0.68)])
def test_gas_input_is_derated_by_4_percent_for_each_1000_feet(altitude: str, factor: float) -> None:
    """NFPA 54 / ANSI Z223.1: over 2000 ft, 4 % for each 1000 ft above the sea."""
    found = answer("altitude-derate", [("altitude", f"{altitude} ft")])
    assert [each.figure for each in found.results] == [pytest.approx(factor)]
