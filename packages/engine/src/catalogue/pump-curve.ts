/** A point of a pump's curve that cannot be where it is. */
interface CurveFault {
  /** Its place in the curve, from 0. */
  readonly place: number;
  readonly field: 'flow' | 'head';
  readonly message: string;
}

/** Where the head of a centrifugal pump does not fall from point to point as the flow rises: such a curve has several duty points. */
export function curveFaults(
  curve: readonly { readonly flow: number; readonly head: number }[],
): CurveFault[] {
  return curve.flatMap(({ flow, head }, place): CurveFault[] => {
    const before = curve[place - 1];
    if (before === undefined) return [];
    return [
      ...(flow > before.flow
        ? []
        : [{ place, field: 'flow', message: 'flows must rise along the curve' } as const]),
      ...(head < before.head
        ? []
        : [
            {
              place,
              field: 'head',
              message: 'head must fall as flow rises; a drooping curve has several duty points',
            } as const,
          ]),
    ];
  });
}
