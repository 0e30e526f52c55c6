// Imported before all else. Only syntax that an old Node can read, so that it gets to say what is wrong.
var version = process.versions.node.split('.').map(Number);
var fits = version[0] === 20 ? version[1] >= 19 : version[0] === 22 ? version[1] >= 12 : version[0] > 22;
if (!fits) {
  console.error('Rootcall needs Node 20.19 or newer, or 22.12 or newer. This is ' + process.version + '.');
  process.exit(1);
}
