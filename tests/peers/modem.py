#!/usr/bin/env python3
"""A GSM modem on a pseudo-terminal, for tests: the AT commands of 3GPP TS 27.005 in PDU mode and some
of TS 27.007, with the TP layer of TS 23.040 and the alphabets of TS 23.038 written here from the
tables, so that it shares no code with us. Other host programs drive it too, which shows that it
behaves like one.

Options: --link FILE makes a link to the pty, --ctl PORT.

Control, HTTP with JSON, on this computer only:
  GET  /log      what was said on the line, and what was submitted
  POST /sms      {"from":"...","text":"...","enc":"gsm7"|"ucs2","ref16":false,"order":"fwd"|"rev",
                  "dup":false,"drop":[2],"ton":"intl"|"alpha"|"national"|"unknown",
                  "later":0: seconds after now at which the network stamps it}
  POST /call     {"from":"...","rings":2,"hidden":false}: RING, +CLIP, NO CARRIER
  POST /fault    {"cmgs":[500,38]: errors for coming submissions, "no_prompt":n, "mute":n,
                  "slow_ms":0, "no_report":bool, "report_status":0, "report_first":bool,
                  "creg":1, "csq":20, "capacity":20, "pin":"READY"|"SIM PIN", "pin_is":"...",
                  "urc_in_reply":bool, "rings_on":bool: after it was hung up too,
                  "news_in_list":"...": said between the line of a listed message and its octets,
                  "no_octets":bool: a listed message comes without them, "no_delete":bool,
                  "no_news":bool: nothing is said of messages that come,
                  "ussd":{"code":["answers, one a time"]}}
  POST /raw      {"text":"..."}: said on the line as it is
  POST /unplug   pulled out and put in again, under the same link

What a full SIM has no room for is kept by the network until there is some.
"""
import argparse, datetime, http.server, json, os, pty, select, sys, termios, threading, time, tty

G = ("@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞ\x1bÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§"
     "¿abcdefghijklmnopqrstuvwxyzäöñüà")
X = {10: '\f', 20: '^', 40: '{', 41: '}', 47: '\\', 60: '[', 61: '~', 62: ']', 64: '|', 101: '€'}
XI = {v: k for k, v in X.items()}


def septets(s):
    out = []
    for c in s:
        i = -1 if c == '\x1b' else G.find(c)
        if i >= 0: out.append([i])
        elif c in XI: out.append([0x1b, XI[c]])
        else: return None
    return out


def pack(sept, fill=0):
    n = 0
    for i, v in enumerate(sept): n |= v << (7 * i + fill)
    return n.to_bytes((7 * len(sept) + fill + 7) // 8, 'little') if sept else b''


def unpack(b, count, fill=0):
    n = int.from_bytes(b, 'little') >> fill
    return [(n >> (7 * i)) & 127 for i in range(count)]


def gsm_text(sept):
    out, esc = '', False
    for v in sept:
        if esc: out += X.get(v, ' ' if v == 0x1b else G[v]); esc = False
        elif v == 0x1b: esc = True
        else: out += G[v]
    return out


def swap(d): return bytes(int((d + 'F')[i + 1] + d[i], 16) for i in range(0, len(d), 2))


def unswap(b, n): return ''.join('%x%x' % (x & 15, x >> 4) for x in b)[:n]


def addr(num, ton='intl', for_sca=False):
    if ton == 'alpha':
        p = pack([v for g in septets(num) for v in g]); return bytes([len(p) * 2 - (1 if (len(num) * 7) % 8 in (1, 2, 3, 4) else 0), 0xD0]) + p
    toa = {'intl': 0x91, 'national': 0xA1, 'unknown': 0x81}[ton]; d = num.lstrip('+')
    body = bytes([toa]) + swap(d)
    return bytes([len(body) if for_sca else len(d)]) + body


def scts(t=None):
    t = t or datetime.datetime.now().astimezone()
    q = int(t.utcoffset().total_seconds() // 900); s = '%02d' % abs(q)
    tz = (int(s[0]) | (8 if q < 0 else 0)) | (int(s[1]) << 4)
    return bytes(((v % 10) << 4) | (v // 10) for v in (t.year % 100, t.month, t.day, t.hour, t.minute, t.second)) + bytes([tz])


def cut(text, enc, ref16, ref):
    units = septets(text) if enc != 'ucs2' else None
    if units is not None:
        single, multi = 160, 152 if ref16 else 153; dcs = 0
    else:
        units = [list(c.encode('utf-16-be')) for c in text]; single, multi = 140, 133 - 1 if ref16 else 134; dcs = 8
    flat = [v for u in units for v in u]
    if len(flat) <= single: return dcs, [(b'', flat)]
    parts, cur = [], []
    for u in units:
        if len(cur) + len(u) > multi: parts.append(cur); cur = []
        cur = cur + u
    parts.append(cur)
    h = lambda i: bytes([6, 8, 4, ref >> 8 & 255, ref & 255, len(parts), i]) if ref16 else bytes([5, 0, 3, ref & 255, len(parts), i])
    return dcs, [(h(i + 1), p) for i, p in enumerate(parts)]


def ud(dcs, udh, units):
    if dcs == 8: return bytes([len(udh) + len(units)]) + udh + bytes(units)
    fill = (7 - len(udh) * 8 % 7) % 7 if udh else 0
    return bytes([(len(udh) * 8 + fill) // 7 + len(units)]) + udh + pack(units, fill)


SCA = addr('+447700900001', 'intl', True)


def deliver(frm, ton, dcs, udh, units, more=True, later=0):
    return SCA + bytes([(0x40 if udh else 0) | (0 if more else 4)]) + addr(frm, ton) + b'\0' + bytes([dcs]) + scts(datetime.datetime.now().astimezone() + datetime.timedelta(seconds=later)) + ud(dcs, udh, units)


def read_submit(pdu):
    n = pdu[0]; i = 1 + n; fo = pdu[i]; mr = pdu[i + 1]; i += 2
    if fo & 3 != 1: raise ValueError('not SMS-SUBMIT')
    digits = pdu[i]; toa = pdu[i + 1]; k = (digits + 1) // 2; raw = pdu[i + 2:i + 2 + k]; i += 2 + k
    num = ('+' if toa & 0x70 == 0x10 else '') + unswap(raw, digits)
    pid, dcs = pdu[i], pdu[i + 1]; i += 2; vp = None
    if fo & 0x18 == 0x10: vp = pdu[i]; i += 1
    elif fo & 0x18: vp = pdu[i:i + 7].hex(); i += 7
    udl = pdu[i]; body = pdu[i + 1:]; udh = b''
    if fo & 0x40: udh = body[:body[0] + 1]
    if dcs & 0x0c == 8 and dcs < 0xF0: text = body[len(udh):udl].decode('utf-16-be', 'replace'); want = udl
    elif dcs & 0x0c == 4: text = 'hex:' + body[len(udh):udl].hex(); want = udl
    else:
        fill = (7 - len(udh) * 8 % 7) % 7 if udh else 0; skip = (len(udh) * 8 + fill) // 7
        text = gsm_text(unpack(body[len(udh):], udl - skip, fill)); want = (udl * 7 + 7) // 8
    return dict(sca=n, fo=fo, mr=mr, to=num, toa=toa, da=pdu[i - 0:i].hex(), pid=pid, dcs=dcs, vp=vp, udl=udl, udh=udh.hex(), text=text, srr=bool(fo & 0x20),
                octets_ok=len(body) == want, tpdu_len=len(pdu) - 1 - n, raw=pdu.hex())


class Modem:
    def __init__(self, fd):
        self.fd = fd; self.lock = threading.RLock(); self.log = []; self.sent = []
        self.echo = 1; self.cmgf = 0; self.cnmi = [0, 0, 0, 0, 0]; self.csms = 0; self.clip = 0; self.cmee = 0; self.crc = 0
        self.mem = {'SM': {}, 'ME': {}}; self.kept = []; self.cur = 'SM'; self.mr = 0; self.ref = 0; self.ringing = None; self.pending_ack = None; self.cscs = '"IRA"'; self.cregn = 0
        self.fault = dict(cmgs=[], no_prompt=0, mute=0, slow_ms=0, report_status=0, creg=1, csq=20, capacity=20, pin='READY')

    @property
    def store(self): return self.mem[self.cur]

    @store.setter
    def store(self, v): self.mem[self.cur] = v

    def say(self, s):
        with self.lock:
            self.log.append({'t': 'tx', 'd': s, 'at': time.time()}); os.write(self.fd, s.encode('latin-1'))

    def line(self, s): self.say('\r\n' + s + '\r\n')
    def urc(self, s): self.line(s)
    def err(self, n=None, kind='CMS'): self.line('+%s ERROR: %d' % (kind, n) if n is not None and self.cmee else 'ERROR')

    # ---- network side
    def sms_in(self, pdu, report=False):
        with self.lock:
            tl = len(pdu) - 1 - pdu[0]; mode = self.cnmi[3] if report else self.cnmi[1]
            if mode == 2 or (report and mode == 1):
                self.urc('%s%d\r\n%s' % ('+CDS: ' if report else '+CMT: ,', tl, pdu.hex().upper()))
                return 'direct'
            if self.kept or not self.has_room(): self.kept.append((pdu, report)); return 'full'
            self.put(pdu, report); return 'stored'

    def has_room(self): return len(self.mem['SM']) < self.fault['capacity']

    def put(self, pdu, report):
        sm = self.mem['SM']; mode = self.cnmi[3] if report else self.cnmi[1]
        i = next(k for k in range(1, 999) if k not in sm); sm[i] = [0, pdu]
        if self.fault.get('no_news'): return
        if mode == 1 or (report and mode == 2): self.urc('+%s: "SM",%d' % ('CDSI' if report else 'CMTI', i))

    def report(self, s):
        f = self.fault
        if f.get('no_report') or not s['srr']: return
        n = s['to'].lstrip('+'); a = bytes([len(n), s['toa']]) + swap(n)
        self.sms_in(SCA + bytes([0x06, s['ref']]) + a + scts() + scts() + bytes([f['report_status']]), True)

    def call(self, num, rings, hidden):
        def go():
            self.ringing = num
            for _ in range(rings):
                if self.ringing is None: break
                self.urc('+CRING: VOICE' if self.crc else 'RING')
                if self.clip: self.urc('+CLIP: "%s",%d,"",0,"",%d' % ('' if hidden else num, 128 if hidden else (145 if num.startswith('+') else 129), 1 if hidden else 0))
                time.sleep(0.4)
            if self.ringing is not None: self.ringing = None; self.urc('NO CARRIER')
        threading.Thread(target=go, daemon=True).start()

    # ---- terminal side
    def command(self, c):
        f = self.fault; u = c.upper()
        if f['mute'] > 0: f['mute'] -= 1; return
        if f['slow_ms']: time.sleep(f['slow_ms'] / 1000)
        if not u.startswith('AT'): return
        b = u[2:]
        if f.get('urc_in_reply') and b: self.urc('+CREG: 1')
        if b.startswith('E0') or b.startswith('E1') or b == 'E': self.echo = int(b[1:2] or 0); b = b[2:].lstrip(';')
        lines = []
        for sub in b.split(';') if b else ['']:                 # V.250 5.2.1: several commands on one line, one final result
            r = self.one(sub)
            if r is None: return
            if r[0] == 'pdu': [self.line(l) for l in lines]; self.say('\r\n> '); return 'pdu'
            if r[0] == 'err': [self.line(l) for l in lines]; return self.err(*r[1:])
            lines += r[1]
        for l in lines: self.line(l)
        self.line('OK')

    def one(self, b):
        f = self.fault; ok = lambda *ls: ('ok', list(ls)); err = lambda n=None, k='CMS': ('err', n, k)
        if b in ('', 'Z', '&F', 'V1', 'S0=0', '&C1', '&D2', '+CMEE=0', '^CURC=0', 'X4', 'Q0', '+IFC=2,2', '+CSMP=17,167,0,0', '+CMMS=2', '+CMMS=1', '+CMMS=0', '+CFUN=1', '+CMER=0', 'Q0V1', 'S7=45S0=0L1V1X4&C1E1Q0', 'Z0', '+CSDH=1', '+CSDH=0'):
            if b == '+CMEE=0': self.cmee = 0
            return ok()
        if b in ('I', '+GMI', '+CGMI'): return ok('SIMULATED')
        if b in ('+GMM', '+CGMM'): return ok('PTY-1')
        if b in ('+GMR', '+CGMR'): return ok('1.0')
        if b in ('+GSN', '+CGSN'): return ok('004999010640000')
        if b == '+CIMI': return ok('001010123456789')
        if b == '+GCAP': return ok('+GCAP: +CGSM')
        if b.startswith('+CMEE='): self.cmee = int(b[6:]); return ok()
        if b == '+CMEE?': return ok('+CMEE: %d' % self.cmee)
        if b == '+CPIN?': return ok('+CPIN: ' + f['pin'])
        if b.startswith('+CPIN='):
            if b[6:] != f.get('pin_is', b[6:]).upper(): return err(16, 'CME')
            f['pin'] = 'READY'; return ok()
        if f['pin'] != 'READY' and b[:5] in ('+CMGS', '+CMGL', '+CMGR', '+CPMS', '+CSCA'): return err(311)
        if b.startswith('+CREG='): self.cregn = int(b[6:]); return ok()
        if b == '+CREG?': return ok('+CREG: %d,%d' % (self.cregn, f['creg']) + (',"00C3","0000A1B2"' if self.cregn == 2 else ''))
        if b == '+CSQ': return ok('+CSQ: %d,99' % f['csq'])
        if b == '+CBC': return ok('+CBC: 0,80')
        if b == '+COPS?': return ok('+COPS: 0,0,"TEST NET"')
        if b.startswith('+COPS='): return ok()
        if b == '+CSCA?': return ok('+CSCA: "+447700900001",145')
        if b.startswith('+CSCA='): return ok()
        if b == '+CSMS=?': return ok('+CSMS: (0,1)')
        if b == '+CSMS?': return ok('+CSMS: %d,1,1,1' % self.csms)
        if b.startswith('+CSMS='): self.csms = int(b[6:]); return ok('+CSMS: 1,1,1')
        if b == '+CSCS=?': return ok('+CSCS: ("GSM","IRA","UCS2","HEX")')
        if b == '+CSCS?': return ok('+CSCS: ' + self.cscs)
        if b.startswith('+CSCS='): self.cscs = b[6:]; return ok()
        if b == '+CPMS=?': return ok('+CPMS: ("SM","ME"),("SM","ME"),("SM","ME")')
        if b.startswith('+CPMS='):
            want = b[6:].split(',')[0].strip('"')
            if want not in self.mem: return err(302)
            self.cur = want
        cap = '%d,%d' % (len(self.store), f['capacity'])
        if b == '+CPMS?': return ok('+CPMS: ' + ','.join(['"%s",%s' % (self.cur, cap)] * 3))
        if b.startswith('+CPMS='): return ok('+CPMS: ' + ','.join([cap] * 3))
        if b == '+CMGF=?': return ok('+CMGF: (0)')
        if b == '+CMGF?': return ok('+CMGF: 0')
        if b.startswith('+CMGF='): return ok() if b[6:] == '0' else err(303)
        if b == '+CNMI=?': return ok('+CNMI: (0,1,2),(0,1,2),(0),(0,1,2),(0,1)')
        if b == '+CNMI?': return ok('+CNMI: ' + ','.join(map(str, self.cnmi)))
        if b.startswith('+CNMI='):
            v = [int(x) for x in b[6:].split(',') if x != '']
            if len(v) > 2 and v[2]: return err(303)
            self.cnmi = v + self.cnmi[len(v):]; return ok()
        if b.startswith('+CNMA'): self.pending_ack = None; return ok()
        if b.startswith('+CLIP='): self.clip = int(b[6:]); return ok()
        if b == '+CLIP?': return ok('+CLIP: %d,1' % self.clip)
        if b.startswith('+CRC='): self.crc = int(b[5:]); return ok()
        if b in ('H', 'H0', '+CHUP'):
            if not f.get('rings_on'): self.ringing = None
            return ok()
        if b == '+CLCC': return ok(*(['+CLCC: 1,1,4,0,0,"%s",145' % self.ringing] if self.ringing else []))
        if b == '+CMGL=?': return ok('+CMGL: (0-4)')
        if b == '+CMGD=?': return ok('+CMGD: (%s),(0-4)' % ','.join(map(str, sorted(self.store))))
        if b.startswith('+CMGL'):
            want = int((b[6:] or '0')); out = []
            for i, (st, p) in sorted(self.store.items()):
                if want in (4, st): out.append('+CMGL: %d,%d,,%d\r\n%s%s' % (i, st, len(p) - 1 - p[0], f['news_in_list'] + '\r\n' if f.get('news_in_list') else '', '' if f.get('no_octets') else p.hex().upper())); self.store[i][0] = 1 if st == 0 else st
            return ok(*out)
        if b.startswith('+CMGR='):
            i = int(b[6:])
            if i not in self.store: return err(321)
            st, p = self.store[i]; self.store[i][0] = 1 if st == 0 else st
            return ok('+CMGR: %d,,%d\r\n%s' % (st, len(p) - 1 - p[0], p.hex().upper()))
        if b.startswith('+CUSD=1,'):
            code = b[8:].split(',')[0].strip('"'); answers = f.get('ussd', {}).get(code, [])
            if answers: threading.Timer(0.1, self.urc, ['+CUSD: ' + answers.pop(0)]).start()
            return ok()
        if b == '+CUSD=2': return ok()
        if b.startswith('+CMGD=') and f.get('no_delete'): return err(500)
        if b.startswith('+CMGD='):
            a = [int(x) for x in b[6:].split(',')]
            if len(a) > 1 and a[1]: self.store = {} if a[1] == 4 else {k: v for k, v in self.store.items() if v[0] == 0}
            elif a[0] in self.store: del self.store[a[0]]
            while self.kept and self.has_room(): self.put(*self.kept.pop(0))
            return ok()
        if b.startswith('+CMGS='):
            if f['no_prompt'] > 0: f['no_prompt'] -= 1; return
            self.want = int(b[6:]); return ('pdu',)
        if b.startswith('+CLAC'): return ok('+CMGS', '+CMGR')
        return err(4, 'CME')

    def submit(self, hexed):
        f = self.fault
        try:
            pdu = bytes.fromhex(hexed.strip()); s = read_submit(pdu)
        except Exception as e:
            self.log.append({'t': 'bad', 'd': hexed, 'e': str(e)}); return self.err(304)
        if s['tpdu_len'] != self.want: self.log.append({'t': 'badlen', 'said': self.want, 'is': s['tpdu_len']}); return self.err(304)
        e = f['cmgs'].pop(0) if f['cmgs'] else 0
        if e: return self.err(e)
        s['ref'] = self.mr; self.mr = (self.mr + 1) % 256; self.sent.append(s)
        if f.get('report_first'): self.report(s)
        self.line('+CMGS: %d' % s['ref']); self.line('OK')
        if not f.get('report_first'): threading.Timer(0.15, self.report, [s]).start()

    def run(self):
        buf = b''; mode = 'cmd'
        while True:
            try:
                if not select.select([self.fd], [], [], 0.05)[0]: continue
                d = os.read(self.fd, 256)
            except (OSError, ValueError): time.sleep(0.05); buf = b''; mode = 'cmd'; continue    # nobody has the line open
            for ch in d:
                c = bytes([ch])
                if mode == 'cmd':
                    if self.echo: os.write(self.fd, c)
                    if c in b'\r':
                        s = buf.decode('latin-1').strip('\n \0'); buf = b''
                        if s:
                            with self.lock:
                                self.log.append({'t': 'rx', 'd': s, 'at': time.time()})
                                try:
                                    if self.command(s) == 'pdu': mode = 'pdu'
                                except ValueError: self.err(4, 'CME')
                    elif c == b'\x08': buf = buf[:-1]
                    elif c != b'\n': buf += c
                else:
                    if self.echo: os.write(self.fd, c)
                    if c == b'\x1a':
                        s = buf.decode('latin-1'); buf = b''; mode = 'cmd'
                        with self.lock: self.log.append({'t': 'rx', 'd': s, 'at': time.time()}); self.submit(s)
                    elif c == b'\x1b': buf = b''; mode = 'cmd'; self.line('OK')
                    elif c not in b'\r\n': buf += c


def main():
    ap = argparse.ArgumentParser(); ap.add_argument('--link'); ap.add_argument('--ctl', type=int, default=8026); a = ap.parse_args()
    def plug():
        master, slave = pty.openpty(); tty.setraw(slave); name = os.ttyname(slave)      # slave stays open here, so the line never hangs up by itself
        if a.link:
            try: os.unlink(a.link)
            except FileNotFoundError: pass
            os.symlink(name, a.link)
        return master, slave, name
    def unplug():
        # A modem that is put in again has its SIM and none of its settings.
        with m.lock:
            os.close(m.fd); os.close(m.slave); m.fd, m.slave, _ = plug()
            m.echo = 1; m.cnmi = [0, 0, 0, 0, 0]; m.clip = 0; m.cmee = 0
    master, slave, name = plug()
    m = Modem(master); m.slave = slave; threading.Thread(target=m.run, daemon=True).start()

    class H(http.server.BaseHTTPRequestHandler):
        def log_message(self, *x): pass
        def out(self, o):
            b = json.dumps(o).encode(); self.send_response(200); self.send_header('content-type', 'application/json'); self.send_header('content-length', str(len(b))); self.end_headers(); self.wfile.write(b)
        def do_GET(self): self.out({'log': m.log, 'sent': m.sent, 'kept': len(m.kept), 'store': {k: [v[0], v[1].hex()] for k, v in m.mem['SM'].items()}})
        def do_POST(self):
            n = int(self.headers.get('content-length') or 0); j = json.loads(self.rfile.read(n) or b'{}')
            if self.path == '/sms':
                m.ref += 1; dcs, parts = cut(j['text'], j.get('enc', 'gsm7'), j.get('ref16'), m.ref)
                ps = [deliver(j['from'], j.get('ton', 'intl'), dcs, h, p, i + 1 < len(parts), j.get('later', 0)) for i, (h, p) in enumerate(parts) if i + 1 not in j.get('drop', [])]
                if j.get('order') == 'rev': ps.reverse()
                if j.get('dup'): ps = [p for p in ps for _ in (0, 1)]
                return self.out({'how': [m.sms_in(p) for p in ps]})
            if self.path == '/pdu': return self.out({'how': m.sms_in(bytes.fromhex(j['hex']))})
            if self.path == '/call': m.call(j['from'], j.get('rings', 2), j.get('hidden', False)); return self.out({'ok': True})
            if self.path == '/fault': m.fault.update(j); return self.out(m.fault)
            if self.path == '/raw': m.say(j['text']); return self.out({'ok': True})
            if self.path == '/unplug': unplug(); return self.out({'ok': True})
            if self.path == '/quit': self.out({'ok': True}); os._exit(0)
            self.out({'error': 'no such thing'})
    srv = http.server.ThreadingHTTPServer(('127.0.0.1', a.ctl), H)
    print('modem pid %d line %s control 127.0.0.1:%d' % (os.getpid(), name, a.ctl), flush=True)
    srv.serve_forever()


if __name__ == '__main__': main()
