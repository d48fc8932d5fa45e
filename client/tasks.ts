/** The task that proofs all scores of a folder by the command line; its findings go to the Problems view. */
import {
  type Disposable,
  type ExtensionContext,
  l10n,
  ProcessExecution,
  Task,
  type TaskDefinition,
  TaskGroup,
  tasks,
  type WorkspaceFolder,
  workspace,
} from 'vscode';

const TYPE = 'bentside';
/** The matcher in package.json. */
const MATCHER = '$bentside';
const ALL = '**/*.bent';

export const proofTasks = (context: ExtensionContext): Disposable =>
  tasks.registerTaskProvider(TYPE, {
    provideTasks: () => foldersOnDisk().map((folder) => proofTask(context, folder, { type: TYPE, files: ALL })),
    // The definition is handed back as it came: the editor asks for the very same object.
    resolveTask: ({ scope, definition }) =>
      typeof scope === 'object' ? proofTask(context, scope, definition) : undefined,
  });

const foldersOnDisk = (): WorkspaceFolder[] =>
  (workspace.workspaceFolders ?? []).filter(({ uri }) => uri.scheme === 'file');

/** The command line that lies with the extension, run by the editor's own Node: nothing is fetched, and no shell reads the pattern. */
function proofTask(context: ExtensionContext, folder: WorkspaceFolder, definition: TaskDefinition): Task {
  const files: string = definition.files ?? ALL;
  const run = new ProcessExecution(process.execPath, [context.asAbsolutePath('dist/cli.js'), 'proof', files], {
    cwd: folder.uri.fsPath,
    env: { ELECTRON_RUN_AS_NODE: '1' },
  });
  const task = new Task(definition, folder, l10n.t('proof all scores'), 'bentside', run, MATCHER);
  task.group = TaskGroup.Test;
  return task;
}
