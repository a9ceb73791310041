// npm run pack: packs what is published, and prints the commands that install it in another project.
import './lib/require-node.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { runMain } from './lib/messages.mjs';
import { packPackages } from './lib/packages.mjs';

const quoted = (path) => (/^[\w./@:\\+-]+$/.test(path) ? path : JSON.stringify(path));

await runMain(async () => {
  await ensureInstalled();
  const [core, geometry, simulator, tool] = (await packPackages()).map(quoted);
  console.log(`The packages are in no registry yet. In the folder of your project:

npm install ${core} ${geometry} ${simulator}

The command line tool, for all folders:

npm install --global ${tool}`);
});
