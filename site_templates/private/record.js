"use strict";
// Opens the document that travels in this file. Nothing is stored and nothing is asked of any network.
(() => {
  const part = id => document.getElementById(id);
  const bytes = text => Uint8Array.from(atob(text), sign => sign.charCodeAt(0));
  // The same rule as where the file was made: ASCII alone counts as a gap.
  const normal = text => text.normalize("NFKC").toLowerCase().split(/[\t\n\v\f\r -@[-`{-~\u200b-\u200d\u2018-\u201f\ufeff]+/).filter(Boolean).join(" ");

  const opened = async words => {
    const seal = JSON.parse(part("seal").textContent);
    const typed = await crypto.subtle.importKey("raw", new TextEncoder().encode(normal(words)), "PBKDF2", false, ["deriveKey"]);
    const way = { name: "PBKDF2", hash: "SHA-256", salt: bytes(seal.salt), iterations: seal.iter };
    const key = await crypto.subtle.deriveKey(way, typed, { name: "AES-GCM", length: 256 }, false, ["decrypt"]);
    const bound = new TextEncoder().encode(`sld1 file|${seal.id}|${seal.iter}`);
    const lock = { name: "AES-GCM", iv: bytes(seal.iv), additionalData: bound };
    return unpacked(await crypto.subtle.decrypt(lock, key, bytes(part("sealed").textContent)));
  };

  const unpacked = frame => {
    const packed = frame.slice(4, 4 + new DataView(frame).getUint32(0));
    return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"))).text();
  };

  // The title stays, so that the browser's history tells nothing; scripts of a parsed document never run.
  const show = html => {
    const found = new DOMParser().parseFromString(html, "text/html");
    for (const root of ["documentElement", "body"])
      for (const { name, value } of found[root].attributes) document[root].setAttribute(name, value);
    part("own").replaceWith(...found.head.querySelectorAll("style"));
    document.body.replaceChildren(...found.body.childNodes);
    document.body.tabIndex = -1;
    document.body.focus();
    scrollTo(0, 0);
  };

  const tell = id => {
    for (const one of ["busy", "empty", "wrong", "damaged"]) part(one).hidden = one !== id;
  };

  const open = async () => {
    if (part("open").disabled) return;
    if (!normal(part("words").value)) return tell("empty");
    part("open").disabled = true;
    tell("busy");
    try {
      show(await opened(part("words").value));
    } catch (fault) {
      tell(fault.name === "OperationError" ? "wrong" : "damaged");
      part("open").disabled = false;
    }
  };

  part("no-box").hidden = true;
  if (!globalThis.crypto?.subtle) return void (part("no-crypto").hidden = false);
  if (!globalThis.DecompressionStream) return void (part("too-old").hidden = false);
  part("box").hidden = false;
  part("words").focus();
  // A preview may forbid forms, so there is none: a button, and the Enter key.
  part("open").addEventListener("click", open);
  part("words").addEventListener("keydown", event => { if (event.key === "Enter") open(); });
  part("show").addEventListener("change", event => { part("words").type = event.target.checked ? "text" : "password"; });
})();
