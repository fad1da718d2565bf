import gardenGate from '../../scenarios/garden-gate.yardwright.json?raw';
import solsticeDial from '../../scenarios/solstice-dial.yardwright.json?raw';

interface Example {
  readonly name: string;
  readonly about: string;
  /** The text of its file. */
  readonly text: string;
}

/** Quilts to try things on; the first is there on a first visit. */
export const EXAMPLES: readonly [Example, ...Example[]] = [
  { name: 'Solstice dial', about: 'a compass star in a ring of wedges, in inches', text: solsticeDial },
  { name: 'Garden gate', about: 'squares, half-square triangles and a binding, in centimetres', text: gardenGate },
];
