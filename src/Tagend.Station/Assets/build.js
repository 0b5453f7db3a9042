// A piece at the bench: one step at a time, by space bar, pedal or tap. Where it is, its clock and what is typed are kept in
// this browser, so that they are there after a reload, a sleep or a station that was stopped; the station is told when it answers.
(() => {
    "use strict";
    const bench = document.querySelector(".bench");
    const place = `tagend-build-${bench.dataset.id}`;
    const steps = [...bench.querySelectorAll(".step")];
    const last = steps.length - 1;
    const at = id => document.getElementById(id);
    const known = JSON.parse(localStorage.getItem(place) ?? "null");
    const station = { step: Number(bench.dataset.step), moves: Number(bench.dataset.moves) };
    const state = known && (known.isUnsent || known.moves > station.moves) ? known : { ...(known ?? {}), ...station, isUnsent: false };
    const keep = () => localStorage.setItem(place, JSON.stringify(state));

    // The step.
    const show = isMoved => {
        steps.forEach((step, i) => { step.hidden = i !== state.step; });
        bench.querySelectorAll(".band").forEach(band => band.toggleAttribute("hidden", Number(band.dataset.band) !== state.step));
        bench.querySelectorAll(".piece-drawing").forEach(drawing => drawing.toggleAttribute("hidden", state.step === last));
        at("count").textContent = state.step === last ? "All steps are done" : `Step ${state.step + 1} of ${last}`;
        at("progress").value = state.step;
        at("next").textContent = state.step < last ? steps[state.step + 1].dataset.name : "";
        at("next").parentElement.hidden = state.step === last;
        at("back").disabled = state.step === 0;
        at("done").hidden = state.step === last;
        if (isMoved) {
            steps[state.step].querySelector("h2").focus({ preventScroll: true });
            window.scrollTo(0, 0);
        }

        tick();
    };

    let isTelling = false;
    const tell = async () => {
        if (isTelling) {
            return;
        }

        isTelling = true;
        const told = state.step;
        try {
            const answer = await fetch(`/build/${bench.dataset.id}/step`, {
                method: "POST",
                headers: { "X-Tagend-Token": window.tagend.token, "Content-Type": "application/x-www-form-urlencoded" },
                body: new URLSearchParams({ step: told, moves: state.moves }),
            });
            if (answer.ok) {
                const [moves, elsewhere] = (await answer.text()).split("\n");
                state.moves = Number(moves);
                state.isUnsent = state.step !== told;
                keep();
                if (elsewhere) {
                    window.tagend.say(elsewhere, "warning");
                }
            }
        } catch { /* told when the station answers */ }

        isTelling = false;
        if (state.isUnsent && state.step !== told) {
            tell();
        }
    };

    let moved = -Infinity; // the first tap counts, however soon
    const leastBetween = 300; // ms: a foot that bounces
    const move = by => {
        const step = Math.min(last, Math.max(0, state.step + by));
        if (step === state.step || performance.now() - moved < leastBetween) {
            return;
        }

        moved = performance.now();
        Object.assign(state, { step, isUnsent: true });
        keep();
        quiet();
        show(true);
        tell();
    };

    at("done").addEventListener("click", () => move(1));
    at("back").addEventListener("click", () => move(-1));
    document.addEventListener("keydown", event => {
        if (event.repeat || event.ctrlKey || event.altKey || event.metaKey || event.target.closest("input, select, textarea, summary, a, button")) {
            return;
        }

        const by = { " ": 1, Enter: 1, PageDown: 1, ArrowRight: 1, Backspace: -1, PageUp: -1, ArrowLeft: -1 }[event.key];
        if (by) {
            event.preventDefault();
            move(by);
        }
    });

    // The clock of a step: it goes by the time of day, so it goes on while nobody looks.
    let sound = null;
    let ringing = null;
    const wake = () => {
        sound ??= new AudioContext();
        sound.resume();
    };
    const beep = () => {
        navigator.vibrate?.(400);
        if (sound?.state === "running") {
            const [tone, volume] = [sound.createOscillator(), sound.createGain()];
            tone.frequency.value = 880;
            volume.gain.value = 0.5;
            tone.connect(volume).connect(sound.destination);
            tone.start();
            tone.stop(sound.currentTime + 0.6);
        }
    };
    const quiet = () => {
        clearInterval(ringing);
        ringing = null;
        if (state.clock?.hasRung) {
            delete state.clock;
            keep();
        }
    };
    const minutesAndSeconds = ms => {
        const seconds = Math.floor(Math.abs(ms) / 1000);
        return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
    };
    const tick = () => {
        const clock = state.clock;
        document.title = document.title.replace(/^\S+ · /, "");
        bench.querySelectorAll(".clock").forEach(box => {
            const isRunning = clock?.step === Number(box.closest(".step").dataset.step);
            const [time, said, start] = box.children;
            const minutes = Number(box.dataset.minutes);
            start.hidden = isRunning;
            if (!isRunning) {
                time.textContent = minutesAndSeconds(minutes * 60000);
                said.textContent = "";
                return;
            }

            const gone = Date.now() - clock.since;
            const left = minutes * 60000 - gone;
            time.textContent = minutesAndSeconds(minutes > 0 ? left : gone);
            const words = minutes > 0 && left <= 0 ? "Time is up, and over by this much" : sound?.state === "running" ? "" : "Tap once, so that it can sound";
            if (said.textContent !== words) {
                said.textContent = words;
            }

            document.title = `${time.textContent} · ${document.title}`;
            if (minutes > 0 && left <= 0 && !clock.hasRung) {
                clock.hasRung = true;
                keep();
                beep();
                ringing = setInterval(beep, 2000);
            }
        });
    };
    bench.querySelectorAll(".clock-start").forEach(button => button.addEventListener("click", () => {
        wake();
        state.clock = { step: state.step, since: Date.now() };
        keep();
        steps[state.step].querySelector("h2").focus({ preventScroll: true });
        tick();
    }));
    document.addEventListener("pointerdown", () => { clearInterval(ringing); if (state.clock) { wake(); } });
    document.addEventListener("keydown", () => { clearInterval(ringing); if (state.clock) { wake(); } });

    // A tablet that sleeps does not sound.
    let awake = null;
    const stayAwake = async () => {
        if (document.visibilityState === "visible" && !awake) {
            awake = await navigator.wakeLock?.request("screen").catch(() => null) ?? null;
            awake?.addEventListener("release", () => { awake = null; });
        }
    };
    document.addEventListener("visibilitychange", () => { stayAwake(); tick(); });
    document.addEventListener("pointerdown", stayAwake);
    stayAwake();

    // What was measured.
    const form = at("measured");
    const length = at("length");
    const verdict = at("verdict");
    const answered = at("answer");
    const fields = [...form.elements].filter(e => e.name && e.type !== "hidden");
    const judge = () => window.htmx.trigger(length, "judge");
    const type = text => {
        length.value = text;
        typed();
        judge();
    };
    const typed = () => {
        state.typed = Object.fromEntries(fields.map(f => [f.name, f.value]));
        keep();
    };
    form.addEventListener("input", typed);
    form.querySelector(".keys").addEventListener("click", event => {
        const key = event.target.closest("button")?.dataset.key;
        if (key) {
            type(key === "clear" ? "" : length.value + (key === "space" ? " " : key));
        }
    });

    const save = async () => {
        state.key ??= crypto.randomUUID();
        keep();
        const body = new URLSearchParams(new FormData(form));
        body.set("key", state.key);
        const answer = await window.tagend.outbox.send({
            key: state.key, url: form.dataset.outbox, page: form.dataset.page, name: form.dataset.name, body: body.toString(),
        });
        if (answer === null) {
            return;
        }

        if ([200, 409, 422].includes(answer.status)) {
            answered.innerHTML = answer.html;
        } else {
            const reason = new DOMParser().parseFromString(answer.html, "text/html").querySelector(".trouble")?.textContent.trim() ?? "";
            window.tagend.say(`The station cannot save this now; it stays on this device. ${reason}`.trim(), "trouble");
        }

        if (answer.status === 200) {
            localStorage.removeItem(place);
            Object.assign(state, { key: undefined, typed: undefined });
            form.hidden = true;
        }
    };
    form.addEventListener("submit", event => {
        event.preventDefault();
        form.elements.mode.value = "";
        save();
    });
    form.parentElement.addEventListener("click", event => {
        const { meant, mode } = event.target.closest("[data-meant], [data-mode]")?.dataset ?? {};
        if (meant) {
            type(meant);
        } else if (mode) {
            form.elements.mode.value = mode;
            save();
        } else if (mode === "") {
            window.tagend.outbox.drop(state.key);
            delete state.key;
            keep();
            answered.replaceChildren();
        }
    });

    fields.filter(f => state.typed?.[f.name]).forEach(f => { f.value = state.typed[f.name]; });
    keep();
    show(false);
    document.addEventListener("DOMContentLoaded", () => {
        if (window.tagend.outbox.of(form.dataset.page)?.asked) {
            save();
        } else if (length.value) {
            judge();
        }
    });
    setInterval(tick, 500);
    setInterval(() => state.isUnsent && tell(), 10000);
    window.addEventListener("online", () => state.isUnsent && tell());
    if (state.isUnsent) {
        tell();
    }
})();
