/* Three small helps; every page works without them. The clock that counts down, a page that brings
   itself up to date, and an outbox for what is saved while the line is dead. */
(() => {
  const root = document.documentElement.dataset;
  const fill = (text, value) => text.replace("{0}", value);

  const span = (minutes) => {
    const hours = Math.floor(minutes / 60);
    if (hours >= 48) return Math.floor(hours / 24) + " d";
    return hours ? hours + " h " + (minutes % 60) + " min" : minutes + " min";
  };
  const countDown = () => {
    for (const place of document.querySelectorAll("[data-until]")) {
      const minutes = Math.floor((Date.parse(place.dataset.until) - Date.now()) / 60000);
      place.textContent =
        minutes >= 0 ? fill(root.left, span(minutes)) : fill(root.over, span(-minutes));
    }
  };

  // The outbox: each reading waits under its own key, with the moment it was taken.
  const BOX = "chillwright-outbox";
  const load = () => {
    try { return JSON.parse(localStorage.getItem(BOX)) || []; } catch (broken) { return []; }
  };
  const store = (all) => localStorage.setItem(BOX, JSON.stringify(all));
  const key = () =>
    Array.from(crypto.getRandomValues(new Uint8Array(16)), (b) => b.toString(16).padStart(2, "0")).join("");

  let isLost = false;
  const tell = () => {
    const line = document.getElementById("line");
    const waiting = load();
    const parts = [];
    if (isLost) parts.push(root.lost);
    const open = waiting.filter((one) => !one.refused).length;
    if (open) parts.push(fill(root.waiting, open));
    line.textContent = parts.join(" ");
    for (const one of waiting.filter((each) => each.refused)) {
      const says = document.createElement("p");
      const link = document.createElement("a");
      const away = document.createElement("button");
      link.href = one.to.replace(/\/entries$/, "");
      link.textContent = one.shown;
      away.type = "button";
      away.textContent = "×";
      away.addEventListener("click", () => {
        store(load().filter((each) => each.key !== one.key));
        tell();
      });
      says.append(root.refused + " ", link, " ", away);
      line.append(says);
    }
  };
  const lost = (now) => { isLost = now; tell(); };

  const send = async (one) => {
    const body = new URLSearchParams(one.fields);
    body.set("once", one.key);
    const answer = await fetch(one.to, { method: "POST", body, redirect: "follow" });
    return answer;
  };
  let sending = false;
  const sendAll = async () => {
    if (sending) return;
    sending = true;
    try {
      for (const one of load().filter((each) => !each.refused)) {
        const answer = await send(one);
        if (answer.status >= 500) return;
        const left = load();
        const at = left.findIndex((each) => each.key === one.key);
        if (answer.ok) left.splice(at, 1);
        else left[at].refused = true;
        store(left);
      }
      lost(false);
    } catch (dead) {
      lost(true);
    } finally {
      sending = false;
    }
  };

  const local = (moment) =>
    new Date(moment.getTime() - moment.getTimezoneOffset() * 60000).toISOString().slice(0, 19);
  document.addEventListener("submit", async (event) => {
    const form = event.target;
    if (!form.matches("[data-outbox]")) return;
    event.preventDefault();
    const fields = Object.fromEntries(new FormData(form));
    if (!fields.when) fields.at = new Date().toISOString();
    const one = {
      key: key(),
      to: form.getAttribute("action"),
      fields,
      shown: [form.getAttribute("action").split("/")[2], fields.temperature, local(new Date()).slice(11, 16)]
        .filter(Boolean).join(" "),
    };
    try {
      const answer = await send(one);
      if (answer.status >= 500) throw new Error("no answer");
      // What was refused is sent once more as a plain form, so that its page says why.
      if (answer.ok) location.assign(answer.url);
      else form.submit();
    } catch (dead) {
      store([...load(), one]);
      form.reset();
      lost(true);
      document.getElementById("line").prepend(root.kept + " ");
    }
  });

  // A page that shows what is due now brings itself up to date, but never under someone's hands.
  const isBusy = (part) =>
    part.contains(document.activeElement) ||
    [...part.querySelectorAll("input:not([type=hidden])")].some((i) => i.value !== i.defaultValue);
  let mark = "";
  const refresh = async () => {
    const part = document.querySelector("[data-refresh]");
    try {
      if (!part || isBusy(part)) {
        await fetch("/api/v1/health");
      } else {
        const answer = await fetch(location.href, mark ? { headers: { "If-None-Match": mark } } : {});
        if (answer.status === 200) {
          mark = answer.headers.get("ETag") || "";
          const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
          const found = fresh.querySelector("[data-refresh]");
          if (found && !isBusy(part)) part.replaceWith(found);
          countDown();
        }
      }
      lost(false);
      await sendAll();
    } catch (dead) {
      lost(true);
    }
  };

  countDown();
  tell();
  sendAll();
  setInterval(countDown, 15000);
  setInterval(refresh, 15000);
  addEventListener("online", sendAll);
})();
