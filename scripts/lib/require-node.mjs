// Imported first, for its effect. Kept to old syntax, so that an old Node can still read it.
const MINIMUM = 20;
const major = Number(process.versions.node.split('.')[0]);
if (major < MINIMUM) {
  console.error(
    `Halfhitch needs Node.js ${MINIMUM} or newer; this is ${process.versions.node}. ` +
      'Install a newer one from https://nodejs.org/ and try again.',
  );
  process.exit(2);
}
