"""Weight from a tape: an estimate, not for dosing."""

from __future__ import annotations

# kg, cm. Source: Carroll & Huntington 1988, Equine Vet J 20(1):41-45 give 11,900 (mean of 281 horses); the widely
# printed form has 11,877 (EQUUS). They differ by 0.2 %, far below the error of a tape.
GIRTH_DIVISOR = 11_900


def weight_kg(girth_cm: float, length_cm: float, divisor: float = GIRTH_DIVISOR) -> float:
    """Estimated weight in kg: girth squared times length over the divisor.

    girth_cm: around the chest behind the withers. length_cm: point of shoulder to point of buttock.
    Raises ValueError unless both are above zero. Source: Carroll & Huntington 1988, Equine Vet J 20(1):41-45.
    """
    if girth_cm <= 0 or length_cm <= 0:
        raise ValueError("girth and length must be above zero")
    return girth_cm**2 * length_cm / divisor
