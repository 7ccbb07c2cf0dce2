// A reading against its limits. Limits and value are in the unit of the inside.

const NOISE = 1e-6;
/** Half a millimetre, in inches: by so little no length misses a limit of 3/8 in or more. Codes round to the millimetre. */
const TAPE = 0.02;

/** A reading that goes as far one way as the other: its size alone is judged. */
const isEven = ({ low, high }) => low < 0 && low === -high;

/** The limits that a value is held against, and its size there: those of its way, where it has ways. */
function heldTo(data, value) {
  const size = data.ways || isEven(data) ? Math.abs(value) : value;
  const limits = data.ways?.filter((_, place) => value === 0 || place === (value > 0 ? 0 : 1)) ?? [isEven(data) ? { high: data.high } : data];
  const near = (limit) => (data.quantity === "length" && limit >= 0.375 ? TAPE : NOISE);
  return limits.map(({ low, high, way }) => {
    const less = (low ?? -Infinity) - size;
    const more = size - (high ?? Infinity);
    const never = low === undefined && high === undefined;
    return { size, way, less, more, never, isWithin: !never && less <= near(low) && more <= near(high) };
  });
}

const waysOf = ({ ways }) => ways?.map(({ way }) => way) ?? [];
