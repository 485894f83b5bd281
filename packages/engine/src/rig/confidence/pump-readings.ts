import type { DrawnNetwork, Reading } from './drawn-network.ts';

/** Inlet and outlet pressure and flow of the rig's pump in one network. */
export function pumpReadings(
  network: DrawnNetwork,
  pump: string,
): { inlet: Reading; outlet: Reading; flow: Reading } | undefined {
  for (const run of network.made.lines.values())
    for (const { element, from, to, item } of run)
      if (item === pump)
        return {
          inlet: network.pressure(from),
          outlet: network.pressure(to),
          flow: network.flow(element),
        };
  return undefined;
}
