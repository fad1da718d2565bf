/** A colour in a word or two, to tell roles apart that have no better name. Plain words for hue and lightness. */

/** @param colour "#rrggbb", or a name, which stands as it is */
export function colourName(colour: string): string {
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/.exec(colour);
  if (digits === null) return colour.startsWith('url(') ? 'shaded' : colour;
  const [r, g, b] = digits.slice(1).map((two) => Number.parseInt(two, 16) / 255) as [number, number, number];
  const [most, least] = [Math.max(r, g, b), Math.min(r, g, b)];
  const light = (most + least) / 2;
  const spread = most - least;
  if (light > 0.95) return 'white';
  if (light < 0.06) return 'black';
  const tone = light > 0.72 ? 'light ' : light < 0.33 ? 'dark ' : '';
  if (spread < 0.08) return `${tone}grey`;
  const sixth = most === r ? ((g - b) / spread + 6) % 6 : most === g ? (b - r) / spread + 2 : (r - g) / spread + 4;
  return `${tone}${hueName(sixth * 60, light)}`;
}

function hueName(hue: number, light: number): string {
  const names = [
    [15, 'red'],
    [45, light < 0.45 ? 'brown' : 'orange'],
    [70, 'yellow'],
    [165, 'green'],
    [200, 'turquoise'],
    [255, 'blue'],
    [290, 'violet'],
    [335, 'pink'],
    [361, 'red'],
  ] as const;
  return names.find(([to]) => hue < to)![1];
}
