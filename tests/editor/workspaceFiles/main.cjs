// Files of the test's folder for the workbench: a file system over the server that serves it.
const { EventEmitter, FileChangeType, FileSystemError, Disposable, workspace } = require('vscode');

exports.activate = (context) => {
  const base = context.extensionUri;
  const changes = new EventEmitter();
  const call = async (uri, does, init) => {
    const address = `${base.scheme}://${base.authority}/files${encodeURI(uri.path)}?does=${does}`;
    const response = await fetch(address, init);
    if (response.status === 404) throw FileSystemError.FileNotFound(uri);
    if (!response.ok) throw FileSystemError.Unavailable(uri);
    return response;
  };
  const tell = (type, uri) => changes.fire([{ type, uri }]);
  const files = {
    onDidChangeFile: changes.event,
    watch: () => new Disposable(() => {}),
    stat: async (uri) => (await call(uri, 'stat')).json(),
    readDirectory: async (uri) => (await call(uri, 'list')).json(),
    readFile: async (uri) => new Uint8Array(await (await call(uri, 'read')).arrayBuffer()),
    writeFile: async (uri, body) => {
      await call(uri, 'write', { method: 'POST', body });
      tell(FileChangeType.Changed, uri);
    },
    createDirectory: async (uri) => {
      await call(uri, 'make', { method: 'POST' });
    },
    delete: async (uri) => {
      await call(uri, 'delete', { method: 'POST' });
      tell(FileChangeType.Deleted, uri);
    },
    rename: async () => {
      throw FileSystemError.NoPermissions('rename');
    },
  };
  context.subscriptions.push(workspace.registerFileSystemProvider('testfiles', files, { isCaseSensitive: true }));
};
