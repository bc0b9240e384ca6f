/* Small helps; every page works without them. The clock that counts down, a page that brings itself
   up to date, an outbox for what is saved while the line is dead, a word before typed text is lost.
   Kitchens use plain HTTP on a name of their own network, so nothing here may need a secure
   context. */
(() => {
  const root = document.documentElement.dataset;
  const fill = (text, value) => text.replace("{0}", value);

  // The kitchen's clock, told by the page: that of a phone may be wrong, and only counts on from it.
  const ahead = Date.parse(root.now) - Date.now();
  const now = () => Date.now() + ahead;

  const span = (minutes) => {
    const hours = Math.floor(minutes / 60);
    if (hours >= 48) return Math.floor(hours / 24) + " d";
    return hours ? hours + " h " + (minutes % 60) + " min" : minutes + " min";
  };
  const countDown = () => {
    for (const place of document.querySelectorAll("[data-until]")) {
      const left = Date.parse(place.dataset.until) - now();
      const minutes = Math.floor(Math.abs(left) / 60000);
      place.textContent = fill(left >= 0 ? root.left : root.over, span(minutes));
    }
  };

  // The outbox: each entry waits under its own key, with the moment it was taken.
  const BOX = "chillwright-outbox";
  const load = () => {
    try {
      return JSON.parse(localStorage.getItem(BOX)) || [];
    } catch (broken) {
      return [];
    }
  };
  const store = (all) => localStorage.setItem(BOX, JSON.stringify(all));
  const drop = (key) => store(load().filter((each) => each.key !== key));
  const waiting = () => load().filter((each) => !each.refused);
  const newKey = () =>
    Array.from(crypto.getRandomValues(new Uint8Array(16)), (b) => b.toString(16).padStart(2, "0"))
      .join("");

  let isLost = false;
  let said = "";
  // Leads to the form with all that was filled in, so that it only has to be looked at and saved.
  const formOf = (one) => {
    const { token, once, back, sure, ...filled } = one.fields;
    const asked = new URLSearchParams({ ...filled, kept: one.key });
    return one.to.replace(/\/(entries|readings)$/, "") + "?" + asked + "#entry";
  };
  const refusal = (one) => {
    const says = document.createElement("p");
    const what = document.createElement("bdi");
    const why = document.createElement("bdi");
    const lot = document.createElement("a");
    const away = document.createElement("button");
    what.textContent = one.shown;
    why.textContent = one.why || "";
    lot.href = formOf(one);
    lot.textContent = root.mend;
    away.type = "button";
    away.textContent = root.away;
    away.addEventListener("click", () => {
      drop(one.key);
      tell();
    });
    says.append(root.refused + " ", what, ". ", why, " ", lot, " ", away);
    return says;
  };
  const tell = () => {
    const line = document.getElementById("line");
    const open = waiting().length;
    const parts = [said, isLost ? root.lost : "", open ? fill(root.waiting, open) : ""];
    const text = parts.filter(Boolean).join(" ");
    const refused = load().filter((each) => each.refused);
    // Only what changed is said again to those who hear it.
    if (line.dataset.text === text + refused.length) return;
    line.dataset.text = text + refused.length;
    line.textContent = text;
    line.append(...refused.map(refusal));
  };
  const lost = (isNow) => {
    isLost = isNow;
    tell();
  };

  const PATIENCE = 10000;
  const ask = async (address, options) => {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), PATIENCE);
    try {
      const answer = await fetch(address, { ...options, signal: stop.signal });
      if (answer.status >= 500) throw new Error("no answer");
      return answer;
    } finally {
      clearTimeout(timer);
    }
  };
  const send = (one) => {
    const body = new URLSearchParams(one.fields);
    body.set("token", document.querySelector("input[name=token]").value);
    body.set("once", one.key);
    return ask(one.to, { method: "POST", body });
  };
  const enter = () => {
    if (location.pathname !== "/enter") location.assign("/enter");
  };

  const reason = async (answer) => {
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const told = [...page.querySelectorAll("[role=alert]")];
    return told.map((each) => each.textContent.trim()).join(" ");
  };

  let isSending = false;
  const sendAll = async () => {
    if (isSending) return;
    isSending = true;
    try {
      for (const one of waiting()) {
        const answer = await send(one);
        if (answer.status === 401) return enter();
        if (answer.ok) {
          drop(one.key);
          said = fill(root.sent, one.shown);
        } else {
          const why = await reason(answer);
          said = "";
          store(
            load().map((each) => (each.key === one.key ? { ...each, refused: true, why } : each)),
          );
        }
        lost(false);
      }
    } catch (dead) {
      lost(true);
    } finally {
      isSending = false;
    }
  };

  // The round is sent figure by figure, so that each is kept or refused by itself.
  const OF_PLACE = ["place", "temperature", "by"];
  const entriesOf = (form) => {
    const data = new FormData(form);
    const places = data.getAll("place");
    if (places.length < 2) return [{ one: entryOf(form, [...data]) }];
    const others = [...data].filter(([name]) => !OF_PLACE.includes(name));
    const boxes = [...form.elements].filter((each) => each.name === "temperature");
    const all = places.map((place, i) => {
      const isKept = data.get("kept-of") === place;
      const rest = others.filter(([name]) => isKept || !/^(kept|kept-of|when)$/.test(name));
      const own = OF_PLACE.map((name) => [name, data.getAll(name)[i]]);
      return { one: entryOf(form, [...rest, ...own]), box: boxes[i] };
    });
    return all.filter(({ box }) => box.value.trim());
  };
  const entryOf = (form, filled) => {
    const fields = {};
    // Ticks of one name are sent as one field, a blank between them.
    for (const [name, value] of filled) {
      fields[name] = name in fields ? fields[name] + " " + value : value;
    }
    const to = form.getAttribute("action");
    const of = to.startsWith("/lots/") ? to.split("/")[2] : fields.place;
    const time = new Date().toTimeString().slice(0, 5);
    if (!fields.when) fields.at = new Date(now()).toISOString();
    const figure = fields.temperature && fields.temperature + " \u00b0" + fields.scale;
    const card = form.closest(".card") || document.querySelector("h1");
    const food = to.startsWith("/lots/") && (card.querySelector("a bdi, bdi") || card).textContent;
    return {
      key: newKey(),
      to,
      fields,
      shown: [of, figure || fields.portions, time, food].filter(Boolean).join(" "),
    };
  };
  const keep = (left, form) => {
    try {
      store([...load(), ...left.map(({ one }) => one)]);
      form.reset();
      said = root.kept;
    } catch (full) {
      said = root.full;
    }
    delete form.dataset.sending;
    lost(true);
    document.getElementById("line").scrollIntoView({ block: "nearest" });
  };
  // The page that tells of the last, and of the others too.
  const allOf = (saved) => {
    const last = new URL(saved.pop());
    for (const each of saved) {
      const place = new URL(each).searchParams.get("saved");
      if (place) last.searchParams.append("saved", place);
    }
    return last.href;
  };
  const go = (address) => {
    if (address === location.href) location.reload();
    else location.assign(address);
  };
  document.addEventListener("submit", async (event) => {
    const form = event.target;
    if (!form.matches("[data-outbox]")) return;
    event.preventDefault();
    if (form.dataset.sending) return;
    form.dataset.sending = "yes";
    const left = entriesOf(form);
    const saved = [];
    let isRefused = left.length === 0;
    let next = 0;
    try {
      for (const { one, box } of [...left]) {
        const answer = await send(one);
        if (answer.status === 401) {
          keep(left.slice(next), form);
          return enter();
        }
        if (answer.ok) {
          if (one.fields.kept) drop(one.fields.kept);
          saved.push(answer.url);
          left.splice(next, 1);
          if (box) box.value = "";
        } else {
          isRefused = true;
          next += 1;
        }
      }
      // What was refused is sent once more as a plain form, so that its page says why.
      if (!isRefused) return go(allOf(saved));
      for (const each of saved) {
        const told = document.createElement("input");
        told.type = "hidden";
        told.name = "was-saved";
        told.value = new URL(each).searchParams.get("saved") || "";
        form.append(told);
      }
      form.submit();
    } catch (dead) {
      keep(left, form);
    }
  });
  // Another language or scale brings the page anew: what is typed, or was refused, would be lost.
  const isTyped = () =>
    document.querySelector("form.entry [aria-invalid=true]") ||
    [...document.querySelectorAll("form.entry :is(input:not([type=hidden]), textarea)")].some(
      (i) => i.value !== i.defaultValue,
    );
  document.querySelector("form.ways")?.addEventListener("submit", (event) => {
    if (isTyped() && !confirm(root.leave)) event.preventDefault();
  });
  addEventListener("pageshow", () => {
    for (const form of document.querySelectorAll("[data-sending]")) delete form.dataset.sending;
  });

  // A page that shows what is due now brings itself up to date, but never under someone's hands.
  const isBusy = (part) =>
    part.contains(document.activeElement) ||
    [...part.querySelectorAll("input:not([type=hidden])")].some((i) => i.value !== i.defaultValue);
  const refresh = async () => {
    if (document.hidden) return;
    const part = document.querySelector("[data-refresh]");
    try {
      await sendAll();
      if (!part || isBusy(part)) {
        await ask("/api/v1/health");
      } else {
        const answer = await ask(location.href);
        const page = new DOMParser().parseFromString(await answer.text(), "text/html");
        const found = page.querySelector("[data-refresh]");
        if (found && !isBusy(part)) part.replaceWith(found);
        countDown();
      }
      lost(false);
    } catch (dead) {
      lost(true);
    }
  };

  const STEP = 5000;
  let steps = 0;
  setInterval(() => {
    steps += 1;
    const isThird = steps % 3 === 0;
    if (isThird) countDown();
    if (isThird || isLost) refresh();
  }, STEP);
  addEventListener("online", refresh);
  document.addEventListener("visibilitychange", refresh);
  // To open a page without the line is the extra of HTTPS; all else works without it.
  if (window.isSecureContext && "serviceWorker" in navigator) {
    navigator.serviceWorker.register("/worker.js").catch(() => {});
  }
  countDown();
  if (root.old) lost(true);
  else tell();
  sendAll();
})();
