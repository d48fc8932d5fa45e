/** A picture in its size, without most of the margin of a page and the spaces between its elements. */

export interface Cropped {
  /** Begins with its `<svg`. */
  readonly markup: string;
  /** In the drawing's units: tenths of a millimetre at the usual size. */
  readonly width: number;
  readonly height: number;
}

/** Of the margin that a page has around it, in the drawing's units, what a picture can do without; braces reach into the left one. */
const CUT = { left: 12, top: 38, right: 38, bottom: 38 };

export function cropped(svg: string): Cropped {
  const [view = '', across = '0', down = '0'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  const [width, height] = [Number(across) - CUT.left - CUT.right, Number(down) - CUT.top - CUT.bottom];
  const markup = svg
    .slice(svg.indexOf('<svg'))
    .replace(/>\n\s*</g, '><')
    // What lies within keeps its size and place.
    .replace('<svg class="definition-scale"', `$& width="${across}" height="${down}"`)
    .replace(view, `viewBox="${CUT.left} ${CUT.top} ${width} ${height}"`);
  return { markup, width, height };
}
