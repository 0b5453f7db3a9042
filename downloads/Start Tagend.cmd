@echo off
rem Opens Tagend in the browser. The station runs as long as this window is open.
title Tagend
cd /d "%~dp0"
tagend station
if errorlevel 1 pause
