/** The form of what a block was traced from, in a quilt file. What one part says about another: tracingFault. */
import { z } from 'zod';
import { LONGEST_ADDRESS, PICTURE_ADDRESS } from './traced-from.ts';

const place = z.tuple([z.number(), z.number()]);
const id = z.int().min(1);
const step = z.strictObject({ line: id, backward: z.boolean() });
const letter = z.string().regex(/^[A-Z]$/);

const tracing = z.strictObject({
  corners: z.array(z.strictObject({ id, at: place })),
  lines: z.array(z.strictObject({ id, from: id, to: id, through: place.exactOptional() })),
  patches: z.array(
    z.strictObject({
      id,
      steps: z.array(step),
      unit: letter,
      role: z.string().min(1),
      number: z.int().min(1).exactOptional(),
    }),
  ),
  units: z.array(
    z.strictObject({ id: letter, count: z.int().min(1).max(360), mirrored: z.enum(['no', 'also', 'alternate']) }),
  ),
  centre: place.exactOptional(),
  begun: z.strictObject({ start: id, steps: z.array(step) }).exactOptional(),
  next: id,
});

/** @param length how the file's lengths are checked */
export function tracedFromSchema<Length extends z.ZodType<number | string>>(length: Length) {
  const size = z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('rectangle'),
      corners: z.tuple([place, place, place, place]),
      width: length,
      height: length,
    }),
    z.strictObject({ kind: z.literal('length'), from: place, to: place, length }),
  ]);
  return z.strictObject({
    picture: z.string().max(LONGEST_ADDRESS).regex(PICTURE_ADDRESS, {
      error: 'expected a picture as "data:image/jpeg;base64,…", PNG or WebP likewise',
    }),
    size,
    unit: z.enum(['in', 'cm']),
    tracing,
  });
}
