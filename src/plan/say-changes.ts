/** What is given up, in a few words: "room of 1/8 in and no spares". */
import { formatLength } from '../quilt/format-length.ts';
import { parseLength } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import type { Change, OtherCloth } from './give-up.ts';

/** Nothing given up is "as wanted". */
export function sayChanges(quilt: Quilt, changes: readonly Change[]): string {
  return changes.length === 0 ? 'as wanted' : changes.map((change) => sayChange(quilt, change)).join(' and ');
}

function sayChange(quilt: Quilt, change: Change): string {
  switch (change.kind) {
    case 'room':
      return change.room === 0 ? 'no room' : `room of ${sayLength(change.room, quilt)}`;
    case 'facing':
      return `facing within ${change.within}°`;
    case 'hidden':
      return 'patches that are hardly seen lying any way';
    case 'spares':
      return change.spares === 0
        ? 'no spares'
        : `${change.spares} spare${change.spares === 1 ? '' : 's'} of each blank`;
    case 'cloth':
      return sayOtherCloth(quilt, change);
  }
}

function sayOtherCloth(quilt: Quilt, { role, cloth, beside }: OtherCloth): string {
  const name = quilt.cloths.find(({ id }) => id === cloth)?.name ?? cloth;
  const place = quilt.roles.find(({ id }) => id === role)?.name ?? role;
  return `${name} ${beside ? 'beside it' : 'instead'} for “${place}”`;
}

/** As she wrote it; a bare number gets the quilt's unit. */
export function sayLength(length: Length, quilt: Quilt): string {
  if (typeof length === 'number') {
    return formatLength(length, quilt.unit);
  }
  return parseLength(length).unit === null ? `${length} ${quilt.unit}` : length;
}
