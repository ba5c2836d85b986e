"""Cutting plans: how sheets and bars are sawn into what a job needs, and how few of them do.

Plain sizes in, plans out; nothing here knows a door. A plan says whether fewer could have
done, and why not.
"""
