// What the worker answers with: files, their headers, and pages that say why there is none.
const ALWAYS = {
  "Cache-Control": "no-store",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
  "X-Robots-Tag": "noindex",
};

const policy = (scripts, styles) => [
  "default-src 'none'", `script-src ${scripts}`, `style-src ${styles}`, "img-src 'self' data: blob:", "font-src 'self' data:",
  "media-src 'self'", "connect-src 'self'", "worker-src 'self'", "manifest-src 'self'", "object-src 'none'",
  "frame-src 'none'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'none'",
].join("; ");

const answerWith = (body, status, type, rule, more) =>
  new Response(body, { status, headers: { ...ALWAYS, "Content-Type": type, "Content-Security-Policy": rule, ...more } });

const HTML = "text/html; charset=utf-8";
const plain = (status) => answerWith("", status, "text/plain; charset=utf-8", policy("'none'", "'none'"));

// First and last byte of what is asked for; null where all is; undefined where there is no such part.
const rangeOf = (asked, size) => {
  const [, first, last] = /^bytes=(\d*)-(\d*)$/.exec(asked || "") || [];
  if (!first && !last) return null;
  const start = first ? Number(first) : Math.max(0, size - Number(last));
  const end = first && last ? Math.min(Number(last), size - 1) : size - 1;
  return start <= end ? [start, end] : undefined;
};

const fileAnswer = (bytes, mime, csp, asked, status) => {
  const rule = policy(`'self' ${csp.join(" ")}`, "'self' 'unsafe-inline'"), size = bytes.length;
  const type = mime.startsWith("text/") && !mime.includes("charset") ? `${mime}; charset=utf-8` : mime;
  const range = status === 200 ? rangeOf(asked, size) : null;
  if (range === undefined) return answerWith("", 416, type, rule, { "Content-Range": `bytes */${size}` });
  if (range === null) return answerWith(bytes, status, type, rule, { "Accept-Ranges": "bytes" });
  const [start, end] = range;
  return answerWith(bytes.subarray(start, end + 1), 206, type, rule, { "Content-Range": `bytes ${start}-${end}/${size}` });
};

const unlockAnswer = (reason) =>
  answerWith(given.unlock.replace('data-reason=""', `data-reason="${reason}"`), 200, HTML, "frame-ancestors 'none'");

const STATUS = { missing: 404, offline: 503, updating: 503 };
const escaped = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

const troubleAnswer = (reason) => {
  const words = { TITLE: given.words[`${reason}_title`], TEXT: given.words[reason] };
  const page = given.trouble.replace(/%(TITLE|TEXT)%/g, (_, name) => escaped(words[name]));
  return answerWith(page, STATUS[reason] || 502, HTML, policy(given.holderHash, given.styleHash));
};
