import type { StepFault } from './sewing-step.ts';

/**
 * Why a patch cannot be sewn next on its foundation, and what to do, to follow the patch's name.
 * @param names of the unit's patches, by index
 */
export function sayStepFault(fault: StepFault, names: readonly string[]): string {
  const say = (indices: readonly number[]): string => sayList(indices.map((index) => names[index]!));
  switch (fault.kind) {
    case 'apart':
      return 'shares no straight seam with the patches sewn before it; change the sewing order, or piece the unit without paper';
    case 'curved':
      return `meets ${say(fault.against)} along a curve, and curved seams are not for foundations; cut it to its outline and sew the curve without paper`;
    case 'lines':
      return `meets the patches sewn before it (${say(fault.against)}) along ${fault.lines} lines, and a foundation can sew it along one only; change the sewing order, or part the unit in two`;
    case 'both-sides':
      return `lies on both sides of the line along which it would be sewn to ${say(fault.against)}, so it cannot be flipped into place; part it in two, or piece the unit without paper`;
    case 'across':
      return `would be sewn along a line that ${say(fault.across)}, sewn before it, ${fault.across.length === 1 ? 'lies' : 'lie'} across, so the paper cannot be folded back there; change the sewing order, or part the unit in two`;
    case 'parts':
      return `cannot come last, because without it ${say(fault.pieces)} would not hang together`;
  }
}

/** Why one of the patches that hold each other cannot come after the others of them, to follow the patch's name. */
export function sayHeld(fault: StepFault, names: readonly string[]): string {
  const say = (indices: readonly number[]): string => sayList(indices.map((index) => names[index]!));
  switch (fault.kind) {
    case 'apart':
      return 'meets none of the others';
    case 'curved':
      return `meets ${say(fault.against)} along a curve, and curved seams are not for foundations`;
    case 'lines':
      return `meets ${say(fault.against)} along ${fault.lines} lines`;
    case 'both-sides':
      return `lies on both sides of the line along which it meets ${say(fault.against)}`;
    case 'across':
      return `meets the others along a line that ${say(fault.across)} ${fault.across.length === 1 ? 'lies' : 'lie'} across`;
    case 'parts':
      return sayStepFault(fault, names);
  }
}

/** "A1, A2 and A3". */
export function sayList(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
