/** The open files, each brought up to date when somebody asks for it, in turns with the others. */
import type { AnalysisOptions } from '../document/analysis';
import { LEVELS } from '../document/levels';
import { inTurns, type Turns } from '../document/turns';
import type { Settings } from '../features/protocol';
import type { Project } from '../workspace/project';
import { Workspace } from '../workspace/workspace';
import { type Files, folderOf } from './files';
import { signsBefore } from './mark';

/** An open file: its last text, and how far it has been read. */
interface Open {
  text: string;
  /** Of the text, as the client counts. */
  version: number;
  /** Grows with every change of the text, of what it includes or of its settings. */
  revision: number;
  /** The revision that the workspace has read. */
  read: number;
  reading: Promise<void> | undefined;
}

/** Its text has changed, or something elsewhere on which it depends: a file that it includes, its settings. */
export type Because = 'text' | 'elsewhere';

/** A version of a file and what belongs to it. */
export interface Current {
  readonly project: Project;
  readonly version: number;
  readonly settings: Settings;
  /** The reading in which the user sees it. */
  readonly reading: string;
  /** So many signs the client counts before the first of the text. */
  readonly before: number;
}

export class Documents {
  private readonly open = new Map<string, Open>();
  /** By file the reading in which the user sees it; it may be told of before the file is opened. */
  private readonly readings = new Map<string, string>();
  private readonly workspace: Workspace;
  /** Findings in the making: whoever else asks for those of the same version waits with the first. */
  private readonly proofing = new WeakMap<Project, Promise<unknown>>();

  constructor(
    private readonly files: Files,
    private readonly turns: Turns,
    private readonly settingsOf: (uri: string) => Promise<Settings>,
    /** Called for each file whose findings may now be others. */
    private readonly onChange: (uri: string, because: Because) => void,
  ) {
    this.workspace = new Workspace(files);
  }

  /** Addresses of the open files. */
  get uris(): string[] {
    return [...this.open.keys()];
  }

  /** Folders of the open files. */
  get folders(): string[] {
    return this.uris.map(folderOf);
  }

  /** A file is opened or has its next text. */
  update(uri: string, text: string, version: number): void {
    const known = this.open.get(uri);
    if (known === undefined) this.open.set(uri, { text, version, revision: 1, read: 0, reading: undefined });
    else Object.assign(known, { text, version, revision: known.revision + 1 });
    this.onChange(uri, 'text');
    this.refreshIncluding(uri);
  }

  /** The user sees a file in another reading. */
  read(uri: string, reading: string): void {
    this.readings.set(uri, reading);
  }

  close(uri: string): void {
    this.open.delete(uri);
    this.readings.delete(uri);
    // It may have been saved while it was open, and what was saved was nobody's concern.
    this.files.forget(uri);
    this.workspace.changed(uri);
    this.workspace.close(uri);
    this.refreshIncluding(uri);
  }

  /** A file that is not open may have changed, come or gone. */
  changedOutside(uri: string): void {
    if (this.open.has(uri)) return;
    this.workspace.changed(uri);
    this.refreshIncluding(uri);
  }

  /** Files whose settings have changed. */
  refreshAll(): void {
    for (const uri of this.open.keys()) this.refresh(uri);
  }

  private refreshIncluding(uri: string): void {
    for (const other of this.workspace.including(uri)) this.refresh(other);
  }

  private refresh(uri: string): void {
    const open = this.open.get(uri);
    if (open === undefined) return;
    open.revision++;
    this.onChange(uri, 'elsewhere');
  }

  /** How often the file has changed; undefined if it is not open. */
  revision(uri: string): number | undefined {
    return this.open.get(uri)?.revision;
  }

  /** The last text of an open file; undefined of any other. */
  text(uri: string): string | undefined {
    return this.open.get(uri)?.text;
  }

  /** The version of an open file, as the client counts; null if it is not open. */
  version(uri: string): number | null {
    return this.open.get(uri)?.version ?? null;
  }

  /** The file as it now stands; undefined if it is not open, or closed before it was read. */
  async current(uri: string): Promise<Current | undefined> {
    for (;;) {
      const open = this.open.get(uri);
      if (open === undefined) return undefined;
      const project = this.workspace.project(uri);
      if (open.read === open.revision && project !== undefined) {
        const settings = await this.settingsOf(uri);
        if (open.read === open.revision && this.open.get(uri) === open)
          return {
            project,
            version: open.version,
            settings,
            reading: this.readings.get(uri) ?? 'written',
            before: signsBefore(open.text),
          };
        continue;
      }
      open.reading ??= this.readNow(uri, open).finally(() => {
        open.reading = undefined;
      });
      await open.reading;
    }
  }

  /** The same with its findings made, in turns as well. */
  async proofed(uri: string): Promise<Current | undefined> {
    for (;;) {
      const current = await this.current(uri);
      const open = this.open.get(uri);
      if (current === undefined || open === undefined) return undefined;
      const { revision } = open;
      const isOver = (): boolean => open.revision !== revision || this.open.get(uri) !== open;
      const { project } = current;
      const proofing = this.proofing.get(project) ?? inTurns(project.analysis.proofing(), this.turns, isOver);
      this.proofing.set(project, proofing);
      await proofing;
      if (!isOver()) return current;
    }
  }

  /** All open files as they now stand. */
  async all(): Promise<Project[]> {
    const current = await Promise.all(this.uris.map((uri) => this.current(uri)));
    return current.flatMap((one) => one?.project ?? []);
  }

  /** Reads a file; a change meanwhile ends it, and what was made until then is there for the next reading. */
  private async readNow(uri: string, open: Open): Promise<void> {
    const { revision, text } = open;
    const isOver = (): boolean => open.revision !== revision || this.open.get(uri) !== open;
    const options = analysisOptions(await this.settingsOf(uri));
    if (isOver()) return;
    const project = await this.workspace.updateInTurns(uri, text, this.turns, isOver, options);
    if (project !== undefined && !isOver()) open.read = revision;
  }
}

/** What settings say of how a file is read. */
export const analysisOptions = ({ counsel, levels }: Settings): AnalysisOptions => ({
  counsel,
  levels: Object.fromEntries(Object.entries(levels).filter(([, level]) => isLevel(level))),
});

/** Settings are typed by hand: what is no level is passed over. */
const isLevel = (level: unknown): boolean => level === 'ignore' || (LEVELS as readonly unknown[]).includes(level);
