@rem Starts the program that lies beside this file, and its page in the browser.
@cd /d "%~dp0"
@fencecard.exe bench
@if errorlevel 1 pause
