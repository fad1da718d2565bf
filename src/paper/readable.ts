/**
 * The turn, or half round from it, at which a line of text is read from below or from the right.
 * @param degrees of the text in its own frame
 * @param turned how far that frame is turned on the sheet
 */
export function readable(degrees: number, turned: number): number {
  const seen = ((((degrees + turned + 89.5) % 360) + 360) % 360) - 89.5;
  return seen < 90.6 ? degrees : degrees + 180;
}
