// A small message centre for tests, on the npm package `smpp`, which shares no code with us. It
// listens on this computer only.
//
// Options: --port --ctl --user --pass --dlr-ms --idfmt dec|hex-resp --enq-ms --max-sessions, and
// --tls-port --tls-key --tls-cert.
//
// Control, HTTP with JSON:
//   GET  /log     everything seen so far
//   POST /mo      {from,to,text,enc:"gsm7"|"ucs2"|"latin1",split:"udh8"|"udh16"|"sar"|"payload"|"none",
//                 order:"fwd"|"rev", dup:bool, drop:[part numbers],
//                 keep:bool: delivered after each bind until it is answered}
//   POST /raw     {hex}: writes these octets to every bound session
//   POST /fault   {submit_status:[88,20,...]: one error for each coming submit_sm,
//                 no_resp:n: swallows n of them, dlr_stat:"UNDELIV", dup_dlr:bool,
//                 dlr_first:bool: the receipt comes before the answer, no_dlr:bool,
//                 ignore_enq:bool, close:true or the kind of a bind, unbind:bool}
//   POST /quit
'use strict';
const http = require('http'), crypto = require('crypto'), fs = require('fs');
const smpp = require('smpp');
const arg = (n, d) => { const i = process.argv.indexOf('--' + n); return i > 0 ? process.argv[i + 1] : d; };
const PORT = +arg('port', 2775), CTL = +arg('ctl', 8025), USER = arg('user', 'esme'), PASS = arg('pass', 'secret');
const DLR_MS = +arg('dlr-ms', 50), IDFMT = arg('idfmt', 'dec'), ENQ = +arg('enq-ms', 0), MAXS = +arg('max-sessions', 10);
const log = [], sessions = new Set();
const kept = [];
let fault = { submit_status: [], no_resp: 0, dlr_stat: 'DELIVRD' }, seq = 1000, ref = 0;
const ev = (t, o) => { log.push(Object.assign({ t, at: Date.now() }, o)); if (process.env.VERBOSE) console.log(JSON.stringify(log[log.length - 1])); return log[log.length - 1]; };
const STATE = { ENROUTE: 1, DELIVRD: 2, EXPIRED: 3, DELETED: 4, UNDELIV: 5, ACCEPTD: 6, UNKNOWN: 7, REJECTD: 8 };
const stamp = () => { const d = new Date(), p = n => String(n).padStart(2, '0'); return p(d.getUTCFullYear() % 100) + p(d.getUTCMonth() + 1) + p(d.getUTCDate()) + p(d.getUTCHours()) + p(d.getUTCMinutes()); };

// GSM 7-bit default alphabet, written out here so the peer does not lean on the code under test
const G = "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞ\x1bÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";
const GX = { '\f': 10, '^': 20, '{': 40, '}': 41, '\\': 47, '[': 60, '~': 61, ']': 62, '|': 64, '€': 101 };
function units(text, enc) { // list of indivisible octet groups
  const out = [];
  for (const c of text) {
    if (enc === 'gsm7') { const i = c === '\x1b' ? -1 : G.indexOf(c); if (i >= 0) out.push([i]); else if (c in GX) out.push([0x1b, GX[c]]); else throw new Error('not GSM-7: ' + c); }
    else if (enc === 'ucs2') { const b = Buffer.from(c, 'utf16le'); b.swap16(); out.push([...b]); }
    else out.push([c.charCodeAt(0) & 255]);
  }
  return out;
}
function cut(text, enc, single, multi) { // limits in octets of short_message (unpacked for gsm7)
  const u = units(text, enc), all = u.flat();
  if (all.length <= single) return [Buffer.from(all)];
  const parts = []; let cur = [];
  for (const g of u) { if (cur.length + g.length > multi) { parts.push(Buffer.from(cur)); cur = []; } cur.push(...g); }
  parts.push(Buffer.from(cur)); return parts;
}
const DC = { gsm7: 0, latin1: 3, ucs2: 8 };
function mo(o) {
  const enc = o.enc || 'gsm7', how = o.split || 'udh8', r = (++ref);
  const lim = enc === 'gsm7' ? [160, how === 'udh16' ? 152 : 153] : enc === 'ucs2' ? [140, how === 'udh16' ? 132 : 134] : [140, 134];
  let pdus;
  const base = { source_addr_ton: 1, source_addr_npi: 1, source_addr: o.from, dest_addr_ton: 0, dest_addr_npi: 1, destination_addr: o.to, data_coding: DC[enc] };
  if (how === 'none' || how === 'payload') {
    const b = Buffer.from(units(o.text, enc).flat());
    pdus = [how === 'payload' ? Object.assign({}, base, { short_message: Buffer.alloc(0), message_payload: b }) : Object.assign({}, base, { short_message: b })];
  } else {
    const ps = cut(o.text, enc, lim[0], lim[1]);
    pdus = ps.map((b, i) => {
      if (ps.length === 1) return Object.assign({}, base, { short_message: b });
      if (how === 'sar') return Object.assign({}, base, { short_message: b, sar_msg_ref_num: r & 0xffff, sar_total_segments: ps.length, sar_segment_seqnum: i + 1 });
      const udh = how === 'udh16' ? Buffer.from([6, 8, 4, (r >> 8) & 255, r & 255, ps.length, i + 1]) : Buffer.from([5, 0, 3, r & 255, ps.length, i + 1]);
      return Object.assign({}, base, { esm_class: 0x40, short_message: Buffer.concat([udh, b]) });
    });
  }
  let list = pdus.map((p, i) => [i + 1, p]).filter(([n]) => !(o.drop || []).includes(n)).map(x => x[1]);
  if (o.order === 'rev') list.reverse();
  if (o.dup) list = list.flatMap(p => [p, p]);
  if (o.keep) kept.push(...list);
  for (const s of sessions) if (s.canRx) for (const p of o.keep ? [...kept] : list) bring(s, p);
  return list.length;
}
// A text that is to be kept is delivered after each bind until it was answered, once on each line.
function bring(s, p) {
  if (kept.includes(p)) {
    if (s.brought.has(p)) return;
    s.brought.add(p);
  }
  s.deliver_sm(Object.assign({}, p), r => {
    ev('deliver_sm_resp', { status: r.command_status, seq: r.sequence_number });
    const at = kept.indexOf(p);
    if (r.command_status === 0 && at >= 0) { kept.splice(at, 1); ev('answered', {}); }
  });
}
function receipt(s, pdu, id) {
  const st = fault.dlr_stat, when = stamp();
  const rid = IDFMT === 'hex-resp' ? String(parseInt(id, 16)) : id; // some centres answer in hex and report in decimal
  const dlr = {
    esm_class: 0x04, source_addr_ton: pdu.dest_addr_ton, source_addr_npi: pdu.dest_addr_npi, source_addr: pdu.destination_addr,
    dest_addr_ton: pdu.source_addr_ton, dest_addr_npi: pdu.source_addr_npi, destination_addr: pdu.source_addr, data_coding: 0,
    short_message: Buffer.from(`id:${rid} sub:001 dlvrd:${st === 'DELIVRD' ? '001' : '000'} submit date:${when} done date:${when} stat:${st} err:${st === 'DELIVRD' ? '000' : '001'} text:`, 'latin1'),
    receipted_message_id: rid, message_state: STATE[st] || 7,
  };
  for (let n = 0; n < (fault.dup_dlr ? 2 : 1); n++) s.deliver_sm(Object.assign({}, dlr), r => ev('dlr_resp', { id: rid, status: r.command_status }));
  ev('dlr', { id: rid, stat: st });
}
function onSession(s) {
  ev('connect', {}); s.brought = new Set();
  s.on('error', e => ev('error', { e: String(e) }));
  s.on('close', () => { sessions.delete(s); clearInterval(s.enq); ev('close', {}); });
  const bind = (kind, rx) => s.on('bind_' + kind, p => {
    ev('bind', { kind, system_id: p.system_id, version: p.interface_version, system_type: p.system_type });
    if (p.system_id !== USER || p.password !== PASS) return s.send(p.response({ command_status: smpp.ESME_RINVPASWD, system_id: 'peer' }));
    if (sessions.size >= MAXS) return s.send(p.response({ command_status: smpp.ESME_RBINDFAIL, system_id: 'peer' }));
    if (s.bound) return s.send(p.response({ command_status: smpp.ESME_RALYBND, system_id: 'peer' }));
    s.bound = true; s.kind = kind; s.canRx = rx; sessions.add(s);
    s.send(p.response({ system_id: 'peer', sc_interface_version: 0x34 }));
    if (rx) setTimeout(() => { for (const p of [...kept]) bring(s, p); }, 20);
    if (ENQ) s.enq = setInterval(() => s.enquire_link({}, () => ev('enquire_link_resp', {})), ENQ);
  });
  bind('transceiver', true); bind('receiver', true); bind('transmitter', false);
  s.on('enquire_link', p => { ev('enquire_link', {}); if (!fault.ignore_enq) s.send(p.response()); });
  s.on('unbind', p => { ev('unbind', {}); s.send(p.response()); s.close(); });
  s.on('deliver_sm_resp', () => {});
  s.on('unknown', p => { ev('unknown', {}); });
  s.on('submit_sm', p => {
    const raw = p.message_payload !== undefined ? p.message_payload : p.short_message;
    const seen = ev('submit_sm', { seq: p.sequence_number, from: p.source_addr, to: p.destination_addr, dc: p.data_coding, esm: p.esm_class, reg: p.registered_delivery, validity: p.validity_period, schedule: p.schedule_delivery_time,
      udh: raw && raw.udh ? raw.udh.map(b => b.toString('hex')) : undefined, text: raw ? (Buffer.isBuffer(raw.message) ? 'hex:' + raw.message.toString('hex') : raw.message) : undefined,
      sar: p.sar_total_segments ? [p.sar_msg_ref_num, p.sar_total_segments, p.sar_segment_seqnum] : undefined });
    if (!s.bound) return s.send(p.response({ command_status: smpp.ESME_RINVBNDSTS }));
    if (fault.no_resp > 0) { fault.no_resp--; return ev('swallowed', {}); }
    const st = fault.submit_status.shift();
    if (st) { seen.refused = st; return s.send(p.response({ command_status: st })); }
    const n = ++seq, id = IDFMT === 'hex-resp' ? n.toString(16) : String(n);
    const wants = (p.registered_delivery & 3) === 1 || ((p.registered_delivery & 3) === 2 && fault.dlr_stat !== 'DELIVRD');
    if (wants && fault.dlr_first && !fault.no_dlr) receipt(s, p, id);
    s.send(p.response({ message_id: id }));
    if (wants && !fault.dlr_first && !fault.no_dlr) setTimeout(() => { if (sessions.has(s)) receipt(s, p, id); }, DLR_MS);
  });
}
const srv = smpp.createServer({}, onSession); srv.listen(PORT, '127.0.0.1');
if (arg('tls-port')) smpp.createServer({ key: fs.readFileSync(arg('tls-key')), cert: fs.readFileSync(arg('tls-cert')), tls: true }, onSession).listen(+arg('tls-port'), '127.0.0.1');
http.createServer((q, r) => {
  let b = ''; q.on('data', d => b += d); q.on('end', () => {
    let out = { ok: true };
    try {
      const j = b ? JSON.parse(b) : {};
      if (q.url === '/log') out = log;
      else if (q.url === '/mo') out.sent = mo(j);
      else if (q.url === '/raw') for (const s of sessions) s.socket.write(Buffer.from(j.hex, 'hex'));
      else if (q.url === '/fault') { if (j.close) { for (const s of sessions) if (j.close === true || s.kind === j.close) s.destroy ? s.destroy() : s.socket.destroy(); } else if (j.unbind) { for (const s of sessions) s.unbind({}, () => ev('unbind_resp', {})); } else Object.assign(fault, j); out = fault; }
      else if (q.url === '/quit') setTimeout(() => process.exit(0), 20);
      else { r.statusCode = 404; out = { error: 'no such thing' }; }
    } catch (e) { r.statusCode = 400; out = { error: String(e) }; }
    r.setHeader('content-type', 'application/json'); r.end(JSON.stringify(out));
  });
}).listen(CTL, '127.0.0.1');
console.log('centre pid ' + process.pid + ' smpp 127.0.0.1:' + PORT + ' control 127.0.0.1:' + CTL);
