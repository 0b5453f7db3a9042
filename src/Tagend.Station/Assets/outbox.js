// What is to be logged once, also where the network is away meanwhile: it is kept in this browser until the station has it.
// Each entry has a key of its own, by which the station knows one that it has already.
(() => {
    "use strict";
    const place = "tagend-outbox";
    const retry = 10000;
    const read = () => JSON.parse(localStorage.getItem(place) ?? "[]");
    const write = entries => {
        localStorage.setItem(place, JSON.stringify(entries));
        show(entries);
    };
    const line = document.createElement("div");
    line.setAttribute("role", "status");
    document.getElementById("notice").after(line);

    const show = entries => {
        line.replaceChildren(...entries.map(entry => {
            const said = document.createElement("p");
            said.className = "warning";
            said.textContent = entry.asked
                ? `${entry.name} is not saved yet: there is a question. `
                : `${entry.name} is kept on this device, and is sent when the station answers. `;
            if (entry.asked && entry.page !== location.pathname) {
                const link = document.createElement("a");
                link.href = entry.page;
                link.textContent = "Answer it";
                said.append(link);
            }

            return said;
        }));
    };

    // What the station says, a refusal as a part of a page too, and nothing where it does not answer.
    const post = async entry => {
        try {
            const answer = await fetch(entry.url, {
                method: "POST",
                headers: { "X-Tagend-Token": window.tagend.token, "HX-Request": "true", "Content-Type": "application/x-www-form-urlencoded" },
                body: entry.body,
            });
            return { status: answer.status, html: await answer.text() };
        } catch {
            return null;
        }
    };

    const deliver = async entry => {
        const answer = await post(entry);
        const others = read().filter(e => e.key !== entry.key);
        if (answer?.status === 200) {
            write(others);
        } else if (answer?.status === 409 || answer?.status === 422) {
            write([...others, { ...entry, asked: true }]);
        } else {
            show(read());
        }

        return answer;
    };

    // One page at a time sends.
    const alone = work => navigator.locks.request(place, work);

    const flush = () => alone(async () => {
        for (const entry of read().filter(e => !e.asked)) {
            if (await deliver(entry) === null) {
                return;
            }
        }
    });

    window.tagend.outbox = {
        // Keeps an entry and tries to send it; null where the station does not answer.
        send: entry => {
            write([...read().filter(e => e.key !== entry.key), entry]);
            return alone(() => deliver(entry));
        },
        of: page => read().find(e => e.page === page),
        drop: key => write(read().filter(e => e.key !== key)),
    };

    window.addEventListener("online", flush);
    window.addEventListener("storage", event => event.key === place && show(read()));
    setInterval(() => read().some(e => !e.asked) && flush(), retry);
    show(read());
    flush();
})();
