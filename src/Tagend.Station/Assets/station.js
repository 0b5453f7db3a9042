// What every page of the station needs: the token on what is sent, and a word when the station does not answer.
(() => {
    "use strict";
    const token = document.querySelector("meta[name=tagend-token]").content;

    document.addEventListener("htmx:configRequest", event => {
        event.detail.headers["X-Tagend-Token"] = token;
    });

    const notice = document.getElementById("notice");
    const say = (sentence, kind) => {
        const line = document.createElement("p");
        line.className = kind;
        line.textContent = sentence;
        notice.replaceChildren(line);
    };

    document.addEventListener("htmx:sendError", () =>
        say("The station does not answer. What you typed stays on this page; it is sent when you try again.", "trouble"));
    document.addEventListener("htmx:afterRequest", event => {
        if (event.detail.successful && notice.querySelector(".trouble")) {
            notice.replaceChildren();
        }
    });

    // A field with data-keep holds what was typed until it was sent, whatever happens to the page.
    const keys = form => [...form.querySelectorAll("[data-keep]")].map(field => `field:${field.dataset.keep}`);
    for (const field of document.querySelectorAll("[data-keep]")) {
        const known = localStorage.getItem(`field:${field.dataset.keep}`);
        if (known !== null) {
            field.value = known;
        }
    }

    document.addEventListener("input", event => {
        const key = event.target.dataset?.keep;
        if (key) {
            localStorage.setItem(`field:${key}`, event.target.value);
        }
    });
    document.addEventListener("htmx:afterRequest", event => {
        if (event.detail.xhr.status >= 200 && event.detail.xhr.status < 300 && event.target instanceof HTMLFormElement) {
            keys(event.target).forEach(key => localStorage.removeItem(key));
        }
    });

    // For the scripts of single screens.
    window.tagend = { token, say };
    if ("serviceWorker" in navigator) {
        navigator.serviceWorker.register("/worker.js").catch(() => { /* without one the pages work, but are not installed */ });
    }
})();
