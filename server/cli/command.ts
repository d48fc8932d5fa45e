/** What a command is, and what it asks of the place where it runs. */
import type { CannotDraw, Engraver } from '../engraving/engraver';
import type { Chunks } from '../export/inChunks';
import type { Host } from '../workspace/host';
import type { Given, OptionTable } from './options';

/** How a command ended. */
export const SOUND = 0;
/** It ran and found fault with an input. */
export const FAULTY = 1;
/** It could not do what was asked. */
export const COULD_NOT = 2;

/** What is known of a command before anybody asks for it. */
export interface Entry {
  readonly name: string;
  /** What stands after the name: `FILES…`. */
  readonly operands: string;
  /** How many of them there must be. */
  readonly fewest: 0 | 1;
  /** One line, in plain words. */
  readonly summary: string;
  /** Commands are loaded one by one: who proofs a score does not wait for the exporters. */
  load(): Promise<Command>;
}

export interface Command {
  readonly options: OptionTable;
  /** The exit code; later where the command has to wait for something. */
  run(host: CliHost, given: Given): number | Promise<number>;
}

/** The text of an input, or why there is none. */
export type Reading = { readonly text: string } | { readonly failure: string };

/** The edge of the command line: files, streams, terminal. All other code here is pure. */
export interface CliHost {
  /** Files for the includes of a score. */
  includes(score: string): Host;
  /** The files that a path or glob names, in their order; none if it names none. */
  find(pattern: string): Promise<readonly string[]>;
  /** A byte that is no UTF-8 becomes U+FFFD; a byte order mark stays. */
  read(file: string): Reading;
  standardInput(): Reading;
  /** The file's full name, with `/` between its parts. */
  absolute(file: string): string;
  /** Where it lies once links are followed: the same for all names of one file. */
  place(file: string): string;
  /** Writes a file whole or not at all, with the folders above it; otherwise says why it could not. */
  write(file: string, content: string | Uint8Array | Chunks): { readonly failure: string } | undefined;
  /** Who draws, or why nobody can. It is loaded when it is first asked for. */
  engraver(): Promise<Engraver | CannotDraw>;
  /** Scores that come with the program, by their full names. */
  samples(): readonly string[];
  /** To standard output: results. */
  out(text: string): void;
  /** To standard error: what went where, what failed. */
  say(text: string): void;
  /** To standard error, if somebody is watching. */
  progress(text: string): void;
}
