/** The outlines of the font's glyphs, read from its zip file when they are first asked for. */
import { strFromU8, unzipSync } from 'fflate';
import type { GlyphOutline } from '../engraver';
import { FONT_NAME } from './glyphs';

export class FontOutlines {
  private readonly known = new Map<number, GlyphOutline | undefined>();
  private boxes: string | undefined;

  constructor(private readonly font: Uint8Array) {}

  of(code: number): GlyphOutline | undefined {
    if (!this.known.has(code)) this.known.set(code, this.read(code));
    return this.known.get(code);
  }

  private read(code: number): GlyphOutline | undefined {
    const name = code.toString(16).toUpperCase();
    const path = / d="([^"]*)"/.exec(this.file(`${FONT_NAME}/${name}.xml`))?.[1];
    this.boxes ??= this.file(`${FONT_NAME}.xml`);
    const box = new RegExp(`<g c="${name}" [^>]*?x="(\\S+)" y="(\\S+)" w="(\\S+)" h="(\\S+)"`).exec(this.boxes);
    if (path === undefined || box === null) return undefined;
    const [x = 0, y = 0, w = 0, h = 0] = box.slice(1).map(Number);
    return { path, box: { left: x, bottom: y, right: x + w, top: y + h } };
  }

  private file(wanted: string): string {
    const bytes = unzipSync(this.font, { filter: ({ name }) => name === wanted })[wanted];
    return bytes === undefined ? '' : strFromU8(bytes);
  }
}
