import process from 'node:process';
import { WebSocketServer } from 'ws';

/** The least there is: a plain loop that sends one text to everybody. Its own process, as the server is. */
const server = new WebSocketServer({ port: 0, host: '127.0.0.1', perMessageDeflate: false });
server.on('listening', () => process.send({ port: server.address().port }));
process.on('message', ({ text }) => {
  const at = process.hrtime.bigint();
  for (const client of server.clients) client.send(text);
  process.send({ at: String(at) });
});
