/** The extension wherever it runs. It asks the language server and holds no knowledge of the notation. */
import { commands, type Disposable, type ExtensionContext } from 'vscode';
import { BarStatus } from './barStatus';
import { commandTable } from './commands';
import { ExportForms } from './exportForm';
import { HelpPages } from './helpPages';
import { OpenSigns } from './openSigns';
import { ScorePanel } from './panel/panel';
import { Readings } from './readings';
import { type MakeClient, Server } from './server';
import { proofTasks } from './tasks';
import { TuningPanel } from './tuning/panel';
import { TypingAids } from './typing';

/** What differs between a computer and a browser. */
export interface Platform {
  readonly makeClient: MakeClient;
  /** Whether a task can run the command line. */
  readonly runsPrograms: boolean;
}

/** Begins to serve; ends when the editor disposes of what it subscribes. */
export async function start(context: ExtensionContext, platform: Platform): Promise<void> {
  const server = new Server(platform.makeClient, context.extensionUri);
  const readings = new Readings(server, context.workspaceState);
  const panel = new ScorePanel(server, readings, context.extensionUri);
  const openSigns = new OpenSigns(server);
  const tuning = new TuningPanel(server, readings, context.extensionUri);
  const own: Disposable[] = [
    server,
    readings,
    panel,
    openSigns,
    tuning,
    new BarStatus(server, readings),
    new TypingAids(server, readings),
    new HelpPages(server),
    ...(platform.runsPrograms ? [proofTasks(context)] : []),
  ];
  for (const [name, run] of Object.entries(
    commandTable({ server, readings, panel, openSigns, tuning, forms: new ExportForms() }),
  )) {
    own.push(commands.registerCommand(name, run));
  }
  context.subscriptions.push(...own);
  await server.start();
}
