/**
 * What the client and the server say to one another beyond the protocol. Types alone: the client shares no other part of the
 * server.
 */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Level } from '../../grammar/findings/finding';

/** What the client says of itself when it starts the server (`initializationOptions`). */
export interface ClientOptions {
  /** An address that opens the help page of a finding; `{code}` stands for its code. */
  readonly helpAddress?: string;
  /** The client answers `bentside/read`, so that files can be included that the server itself cannot reach. */
  readonly canRead?: boolean;
}

/** The settings under `bentside`, of each file by itself. */
export interface Settings {
  /** Whether the music itself is judged: voice leading, accidentals that may be missing. */
  readonly counsel: boolean;
  /** Levels other than the catalogue's, by code; `ignore` hides a finding. */
  readonly levels: Readonly<Partial<Record<FindingCode, Level | 'ignore'>>>;
  readonly hover: { readonly picture: boolean };
  readonly inlayHints: {
    readonly barNumbers: boolean;
    /** Sounding accidentals that are not written. */
    readonly accidentals: boolean;
    /** The octave after a leap that no digit shows. */
    readonly leaps: boolean;
  };
  readonly codeLens: boolean;
}

/** What holds where the client says nothing. */
export const usualSettings: Settings = {
  counsel: true,
  levels: {},
  hover: { picture: true },
  inlayHints: { barNumbers: false, accidentals: false, leaps: false },
  codeLens: true,
};

// ─── server to client ────────────────────────────────────────────────────────────────────────────────────────────

/** `bentside/read`: the text of a file by its address; null if there is none. */
export const READ = 'bentside/read';
export interface ReadParams {
  readonly uri: string;
}
export type ReadResult = string | null;
