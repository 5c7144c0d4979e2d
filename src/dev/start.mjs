/** `npm start`: builds the page, serves what was built, and prints the address. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

const built = spawnSync('npm', ['run', '--silent', 'build', '--', '--logLevel', 'warn'], {
  cwd: root,
  stdio: ['ignore', 2, 2],
  shell: process.platform === 'win32',
});
if (built.status !== 0) {
  console.error('The page could not be built: the message is above.');
  process.exit(1);
}

// Another port is taken if this one is not free.
const server = await preview({ root, logLevel: 'warn', preview: { host: '127.0.0.1', port: 4173 } });
const { port } = server.httpServer.address();
console.log(`Escapement is at http://localhost:${port}/ (Ctrl+C stops it)`);
