// Plain JavaScript of long ago, since any Node may be asked to run it.
const least = [24, 9];
const here = process.versions.node.split('.').map(Number);

if (here[0] < least[0] || (here[0] === least[0] && here[1] < least[1])) {
  console.error(
    `flatwater needs Node ${least.join('.')} or newer, this is ${process.version}. ` +
      'Run npm ci, which brings it on Linux and Windows, and start with npm run; on a Mac install Node 24 first.',
  );
  process.exit(1);
}
