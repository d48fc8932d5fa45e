/** Music on a teaching sheet: pictures with a caption and, where they can be heard, a button. */
import type { CannotDraw, Drawing, Engraver } from '../../engraving/engraver';
import type { PlacedProblem, Score } from '../../score/score';
import type { Stroke } from '../../sound/mix';
import { type Html, tag, text } from '../html';
import { drawLine, type PictureWish } from '../svg';
import { Glyphs, type InlinePicture, MM_PER_UNIT } from './inline';
import { type PluckedString, pluckedString, type SheetSounds } from './sounds';

/** What a button sounds: the same music at each of `PACES`. */
export type Heard = readonly (readonly Stroke[])[];

export interface FigureWords {
  readonly caption: Html;
  /** What is heard and seen, after “Play” and for those who do not see it: “bars 1 to 3, french, as played”. */
  readonly label: string;
  readonly kind?: 'blank';
}

const isNotDrawn = ({ problem }: PlacedProblem): boolean => problem.code === 'export-not-drawn';

/** The pictures and sounds of one sheet. */
export class Figures {
  private readonly glyphs = new Glyphs();
  private readonly strings: Record<string, readonly (readonly PluckedString[])[]> = {};
  private readonly told = new Map<string, PlacedProblem>();

  private readonly engraver: Engraver;

  constructor(engraver: Engraver) {
    this.engraver = remembering(engraver);
  }

  /**
   * Undefined where it cannot be drawn, which is told.
   * @param width in millimetres: as many systems beneath one another as it asks for; as a rule one
   */
  draw(score: Score, wish: PictureWish, width?: number): InlinePicture | undefined {
    const svg = this.svg(score, wish, width === undefined ? undefined : Math.floor(width / MM_PER_UNIT));
    return svg === undefined ? undefined : this.glyphs.inline(svg, MM_PER_UNIT);
  }

  /** As the library draws it, to be altered. @param width in the drawing's units */
  svg(score: Score, wish: PictureWish, width?: number): string | undefined {
    const { svg, problems } = drawLine(score, wish, this.engraver, width);
    // What other tables would do is shown, not said of the score.
    this.tell(wish.table === undefined ? problems : problems.filter(isNotDrawn));
    return svg;
  }

  inline(svg: string, scale: number): InlinePicture {
    return this.glyphs.inline(svg, scale);
  }

  figure({ markup }: InlinePicture, { caption, label, kind }: FigureWords, heard?: Heard): Html {
    const button =
      heard === undefined || heard.every((strokes) => strokes.length === 0) ? '' : this.button(label, heard);
    return tag(
      'figure',
      { class: kind === undefined ? 'music' : `music ${kind}` },
      tag('figcaption', {}, tag('span', {}, caption), button),
      markup.replace('<svg ', `<svg role="img" aria-label="${text(`Music: ${label}`)}" `),
    );
  }

  private button(label: string, heard: Heard): Html {
    const name = `${Object.keys(this.strings).length + 1}`;
    this.strings[name] = heard.map((strokes) => strokes.map(pluckedString));
    const words = [tag('span', {}, 'Play'), tag('span', { class: 'unseen' }, text(` ${label}`))];
    return tag('button', { type: 'button', 'data-sound': name }, ...words);
  }

  /** Each thing once at its place, as of the first reading where it arises. */
  tell(problems: readonly PlacedProblem[]): void {
    for (const one of problems) {
      const { problem, block, lane, statement } = one;
      const key = [problem.code, block, lane, statement, problem.pos].join(' ');
      if (!this.told.has(key)) this.told.set(key, one);
    }
  }

  get isDrawn(): boolean {
    return !this.problems.some(isNotDrawn);
  }

  get problems(): readonly PlacedProblem[] {
    return [...this.told.values()];
  }

  /** What all pictures share, to stand before them. */
  definitions(): Html {
    return this.glyphs.definitions();
  }

  get sounds(): SheetSounds {
    return this.strings;
  }
}

/** Draws what it has drawn before only once: readings of one file have most of their bars in common. */
function remembering(engraver: Engraver): Engraver {
  const known = new Map<string, Drawing | CannotDraw>();
  return {
    library: engraver.library,
    outline: (code) => engraver.outline(code),
    timemap: (mei) => engraver.timemap(mei),
    keys: (ids) => engraver.keys(ids),
    draw(mei, options) {
      const key = `${JSON.stringify(options)} ${mei}`;
      const drawing = known.get(key) ?? engraver.draw(mei, options);
      known.set(key, drawing);
      return drawing;
    },
  };
}
