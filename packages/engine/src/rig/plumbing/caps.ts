import { portKey, ratingOf, type PartOf, type Port } from '../../catalogue/index.ts';
import { cheapest, wayOf, type Supply } from './supply.ts';

/** The cap or plug that closes a port for least money, adapters included; undefined when none does. */
export function capFor(supply: Supply, port: Port, pressure: number): PartOf<'fitting'> | undefined {
  const stands = supply.level(pressure);
  return supply.once(`cap ${portKey(port)} ${stands}`, () => {
    const ways = supply.caps.flatMap((part) => {
      const way =
        ratingOf(part) < stands ? undefined : wayOf([part], [supply.join(port, part.ports[0]!, stands)]);
      return way === undefined ? [] : [{ ...way, part }];
    });
    return cheapest(ways)?.part;
  });
}
