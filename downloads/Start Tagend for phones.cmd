@echo off
rem Opens Tagend in the browser, and lets phones and tablets in. It runs as long as this window is open.
title Tagend
cd /d "%~dp0"
tagend station --lan
if errorlevel 1 pause
