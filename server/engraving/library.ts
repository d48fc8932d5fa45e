/**
 * Loads the engraving library, for Node and for web workers alike. This is the only file that names it.
 *
 * The library's code stays a file of its own beside the bundles, so that it can be exchanged for another build of it
 * (NOTICE.md). What it throws are raw WebAssembly exceptions, some of them mere numbers: they end here, as data.
 */
import type {
  CannotDraw,
  Drawing,
  DrawOptions,
  Engraver,
  GlyphOutline,
  SoundingMoment,
  SoundingNote,
} from './engraver';
import { FONT_NAME } from './font/glyphs';
import { FontOutlines } from './font/outlines';

/** What is used of the library. */
interface Toolkit {
  setOptions(options: object): void;
  loadData(mei: string): number;
  getPageCount(): number;
  renderToSVG(page: number, declaration: boolean): string;
  renderToTimemap(options: object): readonly TimemapEntry[];
  getMIDIValuesForElement(id: string): { readonly pitch?: number };
  getVersion(): string;
  resetXmlIdSeed(seed: number): void;
}

interface TimemapEntry {
  readonly tstamp: number;
  readonly qstamp: number;
  readonly on?: readonly string[];
  readonly off?: readonly string[];
}

interface Library {
  readonly newToolkit: () => Toolkit;
}

/**
 * The engraver, or why there is none: no WebAssembly, or no library.
 * @param font the font's zip file, which the build puts beside the bundles
 */
export async function loadEngraver(font: Uint8Array): Promise<Engraver | CannotDraw> {
  if (!('WebAssembly' in globalThis)) return { failure: 'cannot draw here: there is no WebAssembly' };
  try {
    return new LoadedEngraver(await loadLibrary(), font);
  } catch (error) {
    return { failure: `cannot draw here: the engraving library did not start (${inWords(error)})` };
  }
}

async function loadLibrary(): Promise<Library> {
  // @ts-expect-error the package describes no types; what is used of it stands above
  const { default: createModule } = await import('verovio/wasm');
  // @ts-expect-error likewise
  const { VerovioToolkit, enableLog, LOG_OFF } = await import('verovio/esm');
  const module = await createModule();
  enableLog(LOG_OFF, module);
  return { newToolkit: () => new VerovioToolkit(module) };
}

const CHUNK = 0x8000;

/** Without Node's buffers, for web workers have none. */
function base64(bytes: Uint8Array): string {
  let binary = '';
  for (let i = 0; i < bytes.length; i += CHUNK) binary += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  return btoa(binary);
}

const inWords = (error: unknown): string =>
  error instanceof Error ? error.message : `a fault inside the library, ${String(error)}`;

/** Ids that the MEI has not are counted from here in every drawing, so that equal MEI gives equal pictures. */
const ID_SEED = 1;

/** The widest page that the library takes. */
const WIDEST = 100_000;

/** Distance of two lines of a stave, in tenths of a millimetre. */
const STAVE_SPACE = 18;

/** A last system is stretched over its line if it fills this share of it; a shorter one keeps its natural width. */
const NEARLY_FULL = 2 / 3;

class LoadedEngraver implements Engraver {
  readonly library: string;
  private toolkit: Toolkit;
  private readonly font: string;
  private readonly outlines: FontOutlines;

  constructor(
    private readonly loaded: Library,
    font: Uint8Array,
  ) {
    this.font = base64(font);
    this.outlines = new FontOutlines(font);
    this.toolkit = this.begin();
    this.library = this.toolkit.getVersion();
  }

  outline(code: number): GlyphOutline | undefined {
    return this.outlines.of(code);
  }

  draw(mei: string, options: DrawOptions): Drawing | CannotDraw {
    const wrong = wrongLength(options);
    if (wrong !== undefined) return { failure: wrong };
    return this.guarded(() => {
      this.toolkit.setOptions(libraryOptions(options));
      const unread = this.read(mei);
      if (unread !== undefined) return unread;
      const count = this.toolkit.getPageCount();
      return { pages: Array.from({ length: count }, (_, i) => this.toolkit.renderToSVG(i + 1, true)) };
    });
  }

  timemap(mei: string): readonly SoundingMoment[] | CannotDraw {
    return this.guarded(() => {
      this.toolkit.setOptions({ ...libraryOptions({ breaks: 'none' }), expandNever: true });
      const unread = this.read(mei);
      if (unread !== undefined) return unread;
      return this.toolkit.renderToTimemap({}).map(({ tstamp, qstamp, on, off }) => ({
        time: tstamp,
        crotchets: qstamp,
        begin: on ?? [],
        end: off ?? [],
      }));
    });
  }

  keys(ids: readonly string[]): readonly SoundingNote[] {
    return ids.flatMap((id) => {
      const { pitch } = this.toolkit.getMIDIValuesForElement(id);
      return pitch === undefined ? [] : [{ id, midi: pitch }];
    });
  }

  private read(mei: string): CannotDraw | undefined {
    this.toolkit.resetXmlIdSeed(ID_SEED);
    return this.toolkit.loadData(mei) ? undefined : { failure: 'the engraving library could not read the score' };
  }

  private begin(): Toolkit {
    const toolkit = this.loaded.newToolkit();
    toolkit.setOptions({ fontAddCustom: [this.font] });
    toolkit.setOptions({ font: FONT_NAME });
    return toolkit;
  }

  private guarded<Made>(make: () => Made): Made | CannotDraw {
    try {
      return make();
    } catch (error) {
      // What it left unfinished would stand in the way of the next drawing.
      this.toolkit = this.begin();
      return { failure: `the score could not be drawn: ${inWords(error)}` };
    }
  }
}

/** The library asks nobody whether a length can be: one that cannot ends in an exception, or never. */
function wrongLength({ width, height }: DrawOptions): string | undefined {
  const lengths = { width, height };
  const wrong = Object.entries(lengths).find(([, length]) => length !== undefined && !(length > 0 && length <= WIDEST));
  return wrong === undefined ? undefined : `a ${wrong[0]} of ${wrong[1]} cannot be drawn`;
}

/** What the library calls the options. Its units are halves of a stave space. */
function libraryOptions({ width, height, breaks }: DrawOptions): object {
  return {
    // Every piece of a file, each on pages of its own.
    mdivAll: true,
    expandNever: false,
    breaks,
    // Where two parts stand together it would leave out staves on which only another stave's voices are.
    condense: 'none',
    minLastJustification: NEARLY_FULL,
    unit: STAVE_SPACE / 2,
    pageWidth: width ?? WIDEST,
    pageHeight: height ?? 60_000,
    adjustPageWidth: width === undefined,
    adjustPageHeight: height === undefined,
    // Words keep half a stave space from the heads under them.
    defaultBottomMargin: 1,
    pageMarginTop: 50,
    pageMarginBottom: 50,
    pageMarginLeft: 50,
    pageMarginRight: 50,
    header: 'none',
    footer: 'none',
    svgHtml5: true,
    svgViewBox: true,
  };
}
